package org.benchtrail.catalogue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.BiFunction;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Condition;
import org.benchtrail.core.diagnosis.Danger;
import org.benchtrail.core.diagnosis.Deviation;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Group;
import org.benchtrail.core.diagnosis.Limits;
import org.benchtrail.core.diagnosis.Repair;
import org.benchtrail.core.diagnosis.Risk;
import org.benchtrail.core.diagnosis.SharedRepair;
import org.jspecify.annotations.Nullable;

/**
 * Turns the tree of a catalogue file into entries. What has the wrong shape is noted with its row and stands in for a value
 * that the rules accept, so that reading goes on and later mistakes are found too.
 */
final class CatalogueEntries {
    private static final double STAND_IN = 1;
    private static final double VERIFY_MINUTES = 5;
    private static final double FIX_PROBABILITY = 0.95;

    private final List<CatalogueFile.Fault> faults = new ArrayList<>();
    private final Set<String> reported = new HashSet<>();
    private final Map<String, Integer> rows = new HashMap<>();

    List<CatalogueFile.Fault> faults() {
        return faults;
    }

    /** Whether the value itself could not be read: the rules would only complain about the stand-in. */
    boolean isReported(String field) {
        return reported.contains(field);
    }

    /** Row of an entry, or of the nearest one around it that is in the file. */
    int row(String field) {
        String at = field;
        while (!rows.containsKey(at) && !at.isEmpty()) {
            at = at.substring(0, Math.max(0, Math.max(at.lastIndexOf('.'), at.lastIndexOf('['))));
        }
        return rows.getOrDefault(at, 1);
    }

    /** A map of the file, read key by key; keys nobody asked for are mistakes. */
    private final class EntryReader {
        final String at;
        private final Map<String, YamlNode> fields;
        private final int row;

        EntryReader(YamlNode node, String at, Set<String> keys) {
            this.at = at;
            this.row = node.row();
            rows.put(at, node.row());
            if (node.fields() == null) {
                fault(node.row(), at, "give keys with values here");
            }
            fields = node.fields() == null ? Map.of() : node.fields();
            fields.forEach((key, value) -> {
                rows.put(path(key), value.row());
                if (!keys.contains(key)) {
                    fault(value.row(), path(key), "leave out '" + key + "' or correct its name");
                }
            });
        }

        String path(String key) {
            return at.isEmpty() ? key : at + "." + key;
        }

        @Nullable
        YamlNode find(String key) {
            YamlNode node = fields.get(key);
            return node == null || node.isEmpty() ? null : node;
        }

        private <T> T missing(String key, T standIn) {
            fault(row, path(key), "add '" + key + "'");
            return standIn;
        }

        String text(String key) {
            YamlNode node = find(key);
            return node == null ? missing(key, "") : scalar(node, path(key));
        }

        String text(String key, String otherwise) {
            YamlNode node = find(key);
            return node == null ? otherwise : scalar(node, path(key));
        }

        double number(String key) {
            return find(key) == null ? missing(key, STAND_IN) : number(key, STAND_IN);
        }

        double number(String key, double otherwise) {
            YamlNode node = find(key);
            return node == null ? otherwise : CatalogueEntries.this.number(node, path(key));
        }

        @Nullable
        Double optional(String key) {
            return find(key) == null ? null : (Double) number(key, STAND_IN);
        }

        boolean flag(String key, boolean otherwise) {
            String text = text(key, Boolean.toString(otherwise));
            if (!Set.of("true", "false").contains(text)) {
                fault(row(path(key)), path(key), "write true or false");
            }
            return text.equals("true");
        }

        <E extends Enum<E>> E word(String key, Class<E> type, @Nullable E otherwise) {
            if (find(key) == null) {
                return otherwise == null ? missing(key, type.getEnumConstants()[0]) : otherwise;
            }
            return constant(text(key), path(key), type);
        }

        /** A set of words; empty if it is left out. */
        <E extends Enum<E>> Set<E> words(String key, Class<E> type) {
            return Set.copyOf(list(key, (node, here) -> constant(scalar(node, here), here, type)));
        }

        private <E extends Enum<E>> E constant(String word, String where, Class<E> type) {
            for (E e : type.getEnumConstants()) {
                if (e.name().toLowerCase(Locale.ROOT).replace('_', '-').equals(word)) {
                    return e;
                }
            }
            fault(row(where), where, "choose another word than '" + word + "'");
            return type.getEnumConstants()[0];
        }

        List<String> texts(String key) {
            return list(key, CatalogueEntries.this::scalar);
        }

        <T> List<T> list(String key, BiFunction<YamlNode, String, T> each) {
            YamlNode node = find(key);
            if (node == null) {
                return List.of();
            }
            if (node.items() == null) {
                fault(node.row(), path(key), "give a list here");
                return List.of();
            }
            List<T> all = new ArrayList<>();
            for (int k = 0; k < node.items().size(); k++) {
                all.add(each.apply(node.items().get(k), path(key) + "[" + k + "]"));
            }
            return all;
        }

        Map<String, YamlNode> map(String key) {
            YamlNode node = find(key);
            if (node != null && node.fields() == null) {
                fault(node.row(), path(key), "give keys with values here");
            }
            return node == null || node.fields() == null ? Map.of() : node.fields();
        }
    }

    private void fault(int row, String at, String reason) {
        faults.add(new CatalogueFile.Fault(row, at, reason));
        reported.add(at);
    }

    private String scalar(YamlNode node, String at) {
        rows.put(at, node.row());
        if (node.text() == null) {
            fault(node.row(), at, "give a single value here");
            return "";
        }
        return node.text();
    }

    private double number(YamlNode node, String at) {
        String text = scalar(node, at);
        try {
            return Double.parseDouble(text);
        } catch (NumberFormatException e) {
            fault(node.row(), at, "give a number, not '" + text + "'");
            return STAND_IN;
        }
    }

    List<CauseCategory> categories(YamlNode root) {
        EntryReader file = new EntryReader(root, "", Set.of("format", "origin", "leak", "categories"));
        if (file.number("format") != 1) {
            fault(row("format"), "format", "give format 1: no other is known");
        }
        return file.list("categories", this::category);
    }

    private CauseCategory category(YamlNode node, String at) {
        EntryReader e = new EntryReader(
                node, at, Set.of("id", "title", "escalateMinutes", "groups", "findings", "causes", "sharedRepairs"));
        List<Finding> findings = e.list("findings", this::finding);
        Map<String, List<String>> values = new HashMap<>();
        findings.forEach(f -> values.put(f.id(), f.values()));
        return new CauseCategory(
                e.text("id"),
                e.text("title"),
                e.number("escalateMinutes"),
                e.list("groups", this::group),
                findings,
                e.list("causes", (n, here) -> cause(n, here, values)),
                e.list("sharedRepairs", this::shared));
    }

    private Group group(YamlNode node, String at) {
        EntryReader e = new EntryReader(node, at, Set.of("id", "correlation"));
        return new Group(e.text("id"), e.number("correlation"));
    }

    private Finding finding(YamlNode node, String at) {
        EntryReader e = new EntryReader(
                node,
                at,
                Set.of(
                        "id",
                        "question",
                        "kind",
                        "values",
                        "background",
                        "minutes",
                        "risk",
                        "applies",
                        "group",
                        "limits",
                        "dangers"));
        List<String> values = e.texts("values");
        YamlNode background = e.find("background");
        return new Finding(
                e.text("id"),
                e.text("question"),
                e.word("kind", Finding.Kind.class, null),
                values,
                background == null
                        ? e.missing("background", Map.of())
                        : probabilities(background, e.path("background"), values),
                e.number("minutes"),
                e.word("risk", Risk.class, Risk.NONE),
                e.list("applies", this::condition),
                e.find("group") == null ? null : e.text("group"),
                e.find("limits") == null ? null : limits(e.find("limits"), e.path("limits")),
                e.words("dangers", Danger.class));
    }

    /** One number is the probability of the second of two values; otherwise one for each value. */
    private Map<String, Double> probabilities(YamlNode node, String at, List<String> values) {
        Map<String, Double> p = new LinkedHashMap<>();
        if (node.fields() != null) {
            node.fields().forEach((value, x) -> p.put(value, number(x, at + "." + value)));
        } else {
            double abnormal = number(node, at);
            if (values.size() == 2) {
                p.put(values.get(0), 1 - abnormal);
                p.put(values.get(1), abnormal);
            }
        }
        rows.put(at, node.row());
        return p;
    }

    private Condition condition(YamlNode node, String at) {
        EntryReader e = new EntryReader(node, at, Set.of("finding", "is"));
        return new Condition(e.text("finding"), e.texts("is"));
    }

    private Limits limits(YamlNode node, String at) {
        EntryReader e = new EntryReader(node, at, Set.of("unit", "low", "high", "guard", "physicalMin", "physicalMax"));
        return new Limits(
                e.text("unit"),
                e.optional("low"),
                e.optional("high"),
                e.number("guard", 0),
                e.optional("physicalMin"),
                e.optional("physicalMax"));
    }

    private Cause cause(YamlNode node, String at, Map<String, List<String>> values) {
        EntryReader e = new EntryReader(
                node,
                at,
                Set.of("id", "name", "weight", "deviations", "confirm", "confirmMinutes", "repair", "caution"));
        List<Deviation> deviations = new ArrayList<>();
        e.map("deviations").forEach((finding, p) -> {
            String here = e.path("deviations") + "." + finding;
            deviations.add(new Deviation(finding, probabilities(p, here, values.getOrDefault(finding, List.of()))));
        });
        YamlNode repair = e.find("repair");
        return new Cause(
                e.text("id"),
                e.text("name"),
                e.number("weight"),
                deviations,
                e.text("confirm"),
                e.number("confirmMinutes"),
                repair(repair == null ? e.missing("repair", empty(node)) : repair, e.path("repair"), Set.of()),
                e.text("caution", ""));
    }

    private static YamlNode empty(YamlNode near) {
        return new YamlNode(near.row(), null, Map.of(), null);
    }

    private Repair repair(YamlNode node, String at, Set<String> moreKeys) {
        Set<String> keys = new HashSet<>(moreKeys);
        keys.addAll(Set.of("text", "minutes", "verifyMinutes", "fixProbability"));
        keys.addAll(Set.of("partCost", "risk", "reversible", "needs", "dangers"));
        EntryReader e = new EntryReader(node, at, keys);
        return new Repair(
                e.text("text"),
                e.number("minutes"),
                e.number("verifyMinutes", VERIFY_MINUTES),
                e.number("fixProbability", FIX_PROBABILITY),
                e.number("partCost", 0),
                e.word("risk", Risk.class, Risk.NONE),
                e.flag("reversible", true),
                e.texts("needs"),
                e.words("dangers", Danger.class));
    }

    private SharedRepair shared(YamlNode node, String at) {
        Repair repair = repair(node, at, Set.of("id", "fixes"));
        EntryReader e = new EntryReader(
                node, at, node.fields() == null ? Set.of() : node.fields().keySet());
        Map<String, Double> fixes = new LinkedHashMap<>();
        e.map("fixes").forEach((cause, q) -> fixes.put(cause, number(q, e.path("fixes") + "." + cause)));
        return new SharedRepair(e.text("id"), repair, fixes);
    }
}
