package org.benchtrail.catalogue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Condition;
import org.benchtrail.core.diagnosis.Danger;
import org.benchtrail.core.diagnosis.Deviation;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Group;
import org.benchtrail.core.diagnosis.Limits;
import org.benchtrail.core.diagnosis.Making;
import org.benchtrail.core.diagnosis.Nominal;
import org.benchtrail.core.diagnosis.Repair;
import org.benchtrail.core.diagnosis.Risk;
import org.benchtrail.core.diagnosis.SharedRepair;
import org.benchtrail.core.method.Caution;
import org.benchtrail.platform.YamlNode;

/**
 * Turns the tree of a catalogue file into entries. What has the wrong shape is noted with its row and stands in for a value
 * that the rules accept, so that reading goes on and later mistakes are found too.
 */
final class CatalogueEntries {
    private static final double VERIFY_MINUTES = 5;
    private static final double FIX_PROBABILITY = 0.95;
    private static final int NEWEST = 2;
    private static final String[] MAKING = {
        "label", "do", "way", "invasive", "cautions", "needs", "unless", "narrows", "fleeting"
    };

    private final FileFaults file;
    private int format;

    CatalogueEntries(FileFaults.Unknown unknown) {
        file = new FileFaults(unknown);
    }

    List<CatalogueFile.Fault> faults() {
        return file.faults();
    }

    boolean isReported(String field) {
        return file.isReported(field);
    }

    int row(String field) {
        return file.row(field);
    }

    /** 1, or 2, which says more. */
    int format() {
        return format;
    }

    private EntryReader reader(YamlNode node, String at, Set<String> keys) {
        return new EntryReader(file, node, at, keys);
    }

    List<CauseCategory> categories(YamlNode root) {
        EntryReader whole = reader(root, "", Set.of("format", "origin", "leak", "categories"));
        double number = whole.number("format");
        format = (int) number;
        if (number != format || format < 1 || format > NEWEST) {
            file.fault(row("format"), "format", "give format 1 or 2: no other is known");
        }
        return whole.list("categories", this::category);
    }

    private CauseCategory category(YamlNode node, String at) {
        EntryReader e = reader(
                node,
                at,
                keys(
                        Set.of("id", "title", "escalateMinutes", "groups", "findings", "causes", "sharedRepairs"),
                        "feeds",
                        "phrases",
                        "complaints"));
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
                e.list("sharedRepairs", this::shared),
                new HintEntries(file).of(e));
    }

    /** Those of every format, and those that only the newest has. */
    private Set<String> keys(Set<String> always, String... newest) {
        return format == 1
                ? always
                : Stream.concat(always.stream(), Stream.of(newest)).collect(Collectors.toSet());
    }

    private Group group(YamlNode node, String at) {
        EntryReader e = reader(node, at, Set.of("id", "correlation"));
        return new Group(e.text("id"), e.number("correlation"));
    }

    private Finding finding(YamlNode node, String at) {
        EntryReader e = reader(
                node,
                at,
                keys(
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
                                "dangers"),
                        MAKING));
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
                e.words("dangers", Danger.class),
                format == 1 ? null : making(e));
    }

    private Making making(EntryReader e) {
        Risk risk = e.word("risk", Risk.class, Risk.NONE);
        Finding.Kind kind = e.word("kind", Finding.Kind.class, Finding.Kind.ANSWER);
        Making.Way usual = kind == Finding.Kind.READING ? Making.Way.MEASURE : Making.Way.LOOK;
        return new Making(
                e.text("label", e.text("question", "")),
                e.text("do", ""),
                e.word("way", Making.Way.class, usual),
                e.flag("invasive", risk.compareTo(Risk.LOW) > 0),
                e.words("cautions", Caution.class).stream().map(Enum::name).collect(Collectors.toSet()),
                e.texts("needs"),
                e.list("unless", this::condition),
                e.find("narrows") == null ? null : e.text("narrows"),
                e.flag("fleeting", false));
    }

    /** One number is the probability of the second of two values; otherwise one for each value. */
    private Map<String, Double> probabilities(YamlNode node, String at, List<String> values) {
        Map<String, Double> p = new LinkedHashMap<>();
        if (node.fields() != null) {
            node.fields().forEach((value, x) -> p.put(value, file.number(x, at + "." + value)));
        } else {
            double abnormal = file.number(node, at);
            if (values.size() == 2) {
                p.put(values.get(0), 1 - abnormal);
                p.put(values.get(1), abnormal);
            }
        }
        file.rows.put(at, node.row());
        return p;
    }

    private Condition condition(YamlNode node, String at) {
        EntryReader e = reader(node, at, Set.of("finding", "is"));
        return new Condition(e.text("finding"), e.texts("is"));
    }

    private Limits limits(YamlNode node, String at) {
        EntryReader e = reader(
                node,
                at,
                keys(Set.of("unit", "low", "high", "guard", "physicalMin", "physicalMax"), "by", "cases", "percent"));
        return new Limits(
                e.text("unit"),
                e.optional("low"),
                e.optional("high"),
                e.number("guard", 0),
                e.optional("physicalMin"),
                e.optional("physicalMax"),
                e.find("by") == null ? null : nominal(e));
    }

    private Nominal nominal(EntryReader e) {
        Map<String, Nominal.Case> cases = new LinkedHashMap<>();
        e.map("cases").forEach((name, node) -> {
            EntryReader one = reader(node, e.path("cases") + "." + name, Set.of("low", "high", "source"));
            cases.put(name, new Nominal.Case(one.optional("low"), one.optional("high"), one.text("source")));
        });
        YamlNode percent = e.find("percent");
        EntryReader share = percent == null ? null : reader(percent, e.path("percent"), Set.of("low", "high"));
        return new Nominal(
                e.word("by", Nominal.By.class, null),
                cases,
                share == null ? null : share.optional("low"),
                share == null ? null : share.optional("high"));
    }

    private Cause cause(YamlNode node, String at, Map<String, List<String>> values) {
        EntryReader e = reader(
                node,
                at,
                keys(
                        Set.of("id", "name", "weight", "deviations", "confirm", "confirmMinutes", "repair", "caution"),
                        "confirmBy",
                        "was"));
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
                e.text("caution", ""),
                e.texts("confirmBy"),
                e.find("was") == null ? List.of() : List.of(e.text("was")));
    }

    private static YamlNode empty(YamlNode near) {
        return new YamlNode(near.row(), near.named(), null, Map.of(), null);
    }

    private Repair repair(YamlNode node, String at, Set<String> moreKeys) {
        Set<String> keys = new HashSet<>(moreKeys);
        keys.addAll(Set.of("text", "minutes", "verifyMinutes", "fixProbability"));
        keys.addAll(Set.of("partCost", "risk", "reversible", "needs", "dangers"));
        EntryReader e = reader(node, at, keys);
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
        EntryReader e = reader(
                node, at, node.fields() == null ? Set.of() : node.fields().keySet());
        Map<String, Double> fixes = new LinkedHashMap<>();
        e.map("fixes").forEach((cause, q) -> fixes.put(cause, file.number(q, e.path("fixes") + "." + cause)));
        return new SharedRepair(e.text("id"), repair, fixes);
    }
}
