package org.benchtrail.training;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.method.identify.Hazard;
import org.benchtrail.core.practice.Parameter;
import org.benchtrail.core.practice.Stated.Span;
import org.benchtrail.core.practice.job.DeviceAct;
import org.benchtrail.core.practice.job.Family;
import org.benchtrail.core.practice.job.OwnJob;
import org.benchtrail.core.text.FieldChecks;
import org.benchtrail.core.text.PlainText;
import org.benchtrail.platform.YamlNode;
import org.jspecify.annotations.Nullable;
import org.yaml.snakeyaml.error.MarkedYAMLException;

/** The YAML text of a mentor's job, read with every mistake by its line. */
final class OwnJobText {
    static final int MOST = 20_000;

    private static final Set<String> KEYS = new LinkedHashSet<>(List.of(
            "family",
            "symptom",
            "message",
            "device",
            "category",
            "parameters",
            "faults",
            "knows",
            "backup",
            "hazards",
            "alike"));
    private static final String NUMBER = "([+-]?\\d{1,15}(?:\\.\\d{1,15})?(?:[eE][+-]?\\d{1,3})?)";
    private static final Pattern SPAN = Pattern.compile(NUMBER + "(?: to " + NUMBER + ")?(?: (\\S[^\\n]{0,20}))?");

    private final String text;
    private final List<Fault> faults = new ArrayList<>();

    private OwnJobText(String text) {
        this.text = text;
    }

    /** @param line of the text, from 1 */
    record Fault(int line, String sentence) {}

    /** @param job empty if anything is wrong */
    record Read(Optional<OwnJob> job, List<Fault> faults) {
        Read {
            faults = List.copyOf(faults);
        }
    }

    static Read read(String text) {
        OwnJobText reading = new OwnJobText(text);
        OwnJob job = reading.job();
        return new Read(reading.faults.isEmpty() ? Optional.ofNullable(job) : Optional.empty(), reading.faults);
    }

    private void fault(int line, String sentence) {
        faults.add(new Fault(line, sentence));
    }

    private @Nullable OwnJob job() {
        if (text.length() > MOST) {
            fault(1, "Shorten it to " + MOST + " characters.");
            return null;
        }
        YamlNode root = parsed();
        if (root == null || root.fields() == null) {
            if (root != null) {
                fault(root.row(), "Begin with a line such as 'family: desktop'.");
            }
            return null;
        }
        root.fields().forEach((key, node) -> {
            if (!KEYS.contains(key)) {
                fault(node.named(), "There is no '" + key + "' in a job. There is: " + String.join(", ", KEYS) + ".");
            }
        });
        Map<String, YamlNode> fields = root.fields();
        Family family = family(fields.get("family"));
        String symptom = words(fields, "symptom", "Say in one line what the ticket is called.", true);
        String message = words(fields, "message", "Say what the requester said.", true);
        String device = words(fields, "device", "", false);
        Map<String, String> hazards = hazards(fields.get("hazards"));
        return family == null ? null : new OfFamily(family).job(fields, symptom, message, device, hazards);
    }

    private @Nullable YamlNode parsed() {
        try {
            return YamlNode.parse(text);
        } catch (JsonProcessingException e) {
            broken(e);
            return null;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void broken(JsonProcessingException e) {
        String said = e.getOriginalMessage();
        int line = e.getLocation() == null ? 1 : Math.max(1, e.getLocation().getLineNr());
        if (e.getCause() instanceof MarkedYAMLException yaml && yaml.getProblemMark() != null) {
            fault(yaml.getProblemMark().getLine() + 1, "Mend the YAML here: " + yaml.getProblem() + ".");
        } else if (said.startsWith("Duplicate field ")) {
            fault(line, said.substring("Duplicate field ".length()) + " is here twice: keep one of them.");
        } else {
            fault(line, "Mend the YAML here: " + said.lines().findFirst().orElse("") + ".");
        }
    }

    private @Nullable Family family(@Nullable YamlNode node) {
        String all = Stream.of(Family.values()).map(Family::id).collect(Collectors.joining(", "));
        String id = node == null ? "" : scalar(node);
        Optional<Family> family =
                Stream.of(Family.values()).filter(f -> f.id().equals(id)).findFirst();
        if (family.isEmpty()) {
            fault(
                    node == null ? 1 : node.named(),
                    (node == null ? "Say which device it is: family, one of " : "family is one of ") + all + ".");
        }
        return family.orElse(null);
    }

    /** What stands there in one piece; empty, and no more, if it is a list or has fields: whoever asks says what belongs there. */
    private static String scalar(YamlNode node) {
        return node.text() == null ? "" : node.text().strip();
    }

    private static boolean isBlank(YamlNode node) {
        return node.fields() == null && node.items() == null && scalar(node).isEmpty();
    }

    private String words(Map<String, YamlNode> fields, String key, String whatToDo, boolean required) {
        YamlNode node = fields.get(key);
        if (node == null) {
            if (required) {
                fault(1, key + " is missing. " + whatToDo);
            }
            return "";
        }
        boolean paragraph = key.equals("message");
        String found = paragraph ? PlainText.paragraph(node.text()) : PlainText.line(node.text());
        int most = paragraph ? FieldChecks.PARAGRAPH : FieldChecks.LINE;
        if (found.isEmpty()) {
            fault(node.named(), "Write words behind " + key + ", or leave it out.");
        } else if (found.length() > most) {
            fault(node.named(), "Shorten " + key + " to " + most + " characters.");
        } else if (!PlainText.isText(found)) {
            fault(node.named(), PlainText.WHAT_TO_DO);
        }
        return found;
    }

    private Map<String, String> hazards(@Nullable YamlNode node) {
        Map<String, String> all = new LinkedHashMap<>();
        each(
                node,
                "hazards",
                key -> named(Hazard.values(), key).map(Hazard::name),
                Stream.of(Hazard.values()).map(h -> h.name()).toList(),
                (hazard, there) -> {
                    String noticed = PlainText.line(there.text());
                    if (noticed.isEmpty() || noticed.length() > FieldChecks.LINE || !PlainText.isText(noticed)) {
                        fault(
                                there.named(),
                                "Say behind " + hazard
                                        + " in one line what is noticed of it, such as \"It smells burnt.\"");
                    }
                    all.put(hazard, noticed);
                });
        return all;
    }

    /** Each field of what stands below a key. */
    private <T> void each(
            @Nullable YamlNode node,
            String key,
            Function<String, Optional<T>> known,
            List<String> names,
            BiConsumer<T, YamlNode> then) {
        if (node == null) {
            return;
        }
        if (node.fields() == null) {
            fault(
                    node.named(),
                    "Write what belongs to " + key
                            + " below it, each on a line of its own that begins with two spaces and"
                            + " has a colon behind its name.");
            return;
        }
        Set<T> seen = new LinkedHashSet<>();
        node.fields().forEach((name, value) -> {
            Optional<T> found = known.apply(name);
            if (found.isEmpty()) {
                fault(value.named(), "There is no '" + name + "' here. There is: " + String.join(", ", names) + ".");
            } else if (!seen.add(found.get())) {
                fault(value.named(), "'" + name + "' is here twice: keep one of them.");
            } else {
                then.accept(found.get(), value);
            }
        });
    }

    private static <E extends Enum<E>> Optional<E> named(E[] all, String name) {
        return Stream.of(all).filter(e -> e.name().equals(upper(name))).findFirst();
    }

    private static String upper(String name) {
        return name.strip().toUpperCase(Locale.ROOT).replace('-', '_').replace(' ', '_');
    }

    /** What depends on the device. */
    private final class OfFamily {
        private final Family family;

        OfFamily(Family family) {
            this.family = family;
        }

        OwnJob job(
                Map<String, YamlNode> fields,
                String symptom,
                String message,
                String device,
                Map<String, String> hazards) {
            category(fields.get("category"));
            Map<String, Map<Parameter, Span>> faultsOf = faults(fields.get("faults"));
            return new OwnJob(
                    text,
                    family,
                    symptom,
                    message,
                    device.isEmpty() ? family.device() : device,
                    ofDevice(fields.get("parameters"), faultsOf.keySet()),
                    faultsOf,
                    knows(fields.get("knows")),
                    backup(fields.get("backup")),
                    hazards,
                    alike(fields.get("alike"), faultsOf.keySet()));
        }

        private void category(@Nullable YamlNode node) {
            if (node != null && !upper(scalar(node)).equals(family.trade())) {
                fault(
                        node.named(),
                        "The acts of this device answer the questions of " + family.trade()
                                + ": write that, or leave category out.");
            }
        }

        private Map<String, Map<Parameter, Span>> faults(@Nullable YamlNode node) {
            Map<String, Map<Parameter, Span>> all = new LinkedHashMap<>();
            if (node == null) {
                fault(
                        1,
                        "Say what may be wrong with it: faults, and below it one or more of "
                                + String.join(", ", family.faults()) + ", each with a colon.");
                return all;
            }
            each(
                    node,
                    "faults",
                    name -> Optional.of(upper(name)).filter(family.faults()::contains),
                    family.faults(),
                    (fault, how) -> all.put(fault, isBlank(how) ? Map.of() : spans(how, fault)));
            return all;
        }

        private Map<Parameter, Span> ofDevice(@Nullable YamlNode node, Set<String> named) {
            Map<Parameter, Span> all = spans(node, "parameters");
            if (node != null && node.fields() != null) {
                node.fields()
                        .forEach((name, value) -> named.stream()
                                .filter(f -> family.setBy(f).stream()
                                        .anyMatch(p -> p.name().equals(upper(name))))
                                .findFirst()
                                .ifPresent(f -> fault(
                                        value.named(),
                                        "The fault " + f + " sets " + upper(name) + " itself: write it below " + f
                                                + ".")));
            }
            return all;
        }

        private Map<Parameter, Span> spans(@Nullable YamlNode node, String key) {
            Map<Parameter, Span> all = new HashMap<>();
            each(
                    node,
                    key,
                    name -> family.parameters().stream()
                            .filter(p -> p.name().equals(upper(name)))
                            .findFirst(),
                    family.parameters().stream().map(Parameter::name).toList(),
                    (parameter, value) -> span(parameter, value).ifPresent(span -> all.put(parameter, span)));
            return all;
        }

        private Optional<Span> span(Parameter parameter, YamlNode node) {
            Matcher read = SPAN.matcher(scalar(node));
            String unit = parameter.unit().isEmpty() ? "" : " " + parameter.unit();
            if (!read.matches()) {
                fault(
                        node.named(),
                        "Write " + parameter.name() + " as a number or a range, such as " + number(parameter.low())
                                + unit + " or " + number(parameter.low()) + " to " + number(parameter.high()) + unit
                                + ".");
                return Optional.empty();
            }
            String written = read.group(3) == null ? "" : read.group(3);
            if (!written.equals(parameter.unit())) {
                fault(
                        node.named(),
                        parameter.unit().isEmpty()
                                ? parameter.name() + " has no unit: leave out '" + written + "'."
                                : parameter.name() + " is in " + parameter.unit() + ": write that behind the number.");
                return Optional.empty();
            }
            double low = Double.parseDouble(read.group(1));
            double high = read.group(2) == null ? low : Double.parseDouble(read.group(2));
            if (low > high || low < parameter.low() || high > parameter.high()) {
                fault(
                        node.named(),
                        low > high
                                ? "Write the smaller number of " + parameter.name() + " first."
                                : parameter.name() + " goes from " + number(parameter.low()) + " to "
                                        + number(parameter.high()) + unit + ": keep within that.");
                return Optional.empty();
            }
            return Optional.of(new Span(low, high));
        }

        private Map<DeviceAct, OwnJob.Knows> knows(@Nullable YamlNode node) {
            Map<DeviceAct, OwnJob.Knows> all = new HashMap<>();
            List<DeviceAct> asked = family.acts().stream()
                    .filter(a -> a.way() == DeviceAct.Way.ASK)
                    .toList();
            each(
                    node,
                    "knows",
                    name -> asked.stream()
                            .filter(a -> a.name().equals(upper(name)))
                            .findFirst(),
                    asked.stream().map(DeviceAct::id).toList(),
                    (act, value) -> named(OwnJob.Knows.values(), scalar(value))
                            .ifPresentOrElse(
                                    says -> all.put(act, says),
                                    () -> fault(
                                            value.named(),
                                            "Say how the requester answers " + act.id()
                                                    + ": right, wrong or unknown.")));
            return all;
        }

        private OwnJob.@Nullable Backup backup(@Nullable YamlNode node) {
            if (node == null) {
                return null;
            }
            if (!OwnJob.isBackedUp(family)) {
                fault(node.named(), "Nothing on this device is backed up: leave backup out.");
                return null;
            }
            Optional<OwnJob.Backup> said = named(OwnJob.Backup.values(), scalar(node));
            if (said.isEmpty()) {
                fault(node.named(), "Say what is true of the backup: readable, unreadable or missing.");
            }
            return said.orElse(null);
        }

        private Set<Set<String>> alike(@Nullable YamlNode node, Set<String> own) {
            Set<Set<String>> all = new LinkedHashSet<>();
            if (node == null) {
                return all;
            }
            if (node.items() == null) {
                fault(node.named(), "Write each pair below alike on a line of its own, such as '- [DUST, SLOW_FAN]'.");
                return all;
            }
            for (YamlNode pair : node.items()) {
                List<String> both = pair.items() == null
                        ? List.of()
                        : pair.items().stream().map(item -> upper(scalar(item))).toList();
                if (both.size() != 2
                        || both.get(0).equals(both.get(1))
                        || !family.faults().containsAll(both)) {
                    fault(
                            pair.row(),
                            "A pair is two faults of this device in square brackets. It has: "
                                    + String.join(", ", family.faults()) + ".");
                } else if (both.stream().noneMatch(own::contains)) {
                    fault(pair.row(), "Neither of the two is a fault of this job: leave the pair out.");
                } else if (!all.add(Set.copyOf(both))) {
                    fault(pair.row(), "This pair is here twice: keep one of them.");
                }
            }
            return all;
        }
    }

    static String number(double value) {
        return value == Math.rint(value) && Math.abs(value) < 1e6
                ? Long.toString(Math.round(value))
                : Double.toString(value).replace("E", "e");
    }
}
