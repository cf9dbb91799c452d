package org.benchtrail.core.readin;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Spelling;
import org.jspecify.annotations.Nullable;

/**
 * Values of the UPS-MIB by object name, one to a line: {@code upsBatteryVoltage.0 = 274}, {@code upsOutputPercentLoad.1: 34},
 * {@code UPS-MIB::upsBatteryStatus.0 = INTEGER: batteryNormal(2)}.
 *
 * <p>Source: RFC 1628. Numbers are whole and in the units of the MIB: 274 in 0.1 Volt DC are 27.4 V. Where the UPS tells its own
 * transfer points, rated power and low-battery time, they are the limits of what was measured. A problem's field is the row.
 */
public final class UpsMib {
    private static final int LONGEST_LINE = 500;
    private static final Pattern LINE = Pattern.compile(
            "(?:(?<module>[A-Za-z][A-Za-z0-9-]*)::)?(?<name>[A-Za-z][A-Za-z0-9]*)(?:\\.(?<index>[0-9]{1,9}))?\\s*[=:]\\s*"
                    + "(?:(?<type>INTEGER|Integer32|Unsigned32|Counter32|Gauge32|STRING|OID|Timeticks)\\s*:\\s*)?(?<value>.*)");
    private static final Pattern WHOLE = Pattern.compile("(-?[0-9]{1,18})(?:\\s+(.+))?");
    private static final Pattern ENUM =
            Pattern.compile("(?:(?<label>[A-Za-z]+)(?:\\((?<in>[0-9]{1,9})\\))?|(?<number>[0-9]{1,9}))");
    private static final Pattern ABSENT = Pattern.compile("(?i)no such (instance|object)\\b.*|null|");
    private static final String ALARM_ARC = "1.3.6.1.2.1.33.1.6.3.";

    /** One line as it stands. */
    private record Row(String place, String name, int index, String value) {
        String object() {
            return name + "." + index;
        }
    }

    private final Draft draft;
    private final RowProblems problems = new RowProblems();
    private final List<Row> rows = new ArrayList<>();
    private final Set<String> seen = new HashSet<>();
    private final Map<String, Long> numbers = new LinkedHashMap<>();

    private UpsMib(About about) {
        draft = new Draft(Kind.UPS_MIB, about.device().isEmpty() ? "UPS" : about.device(), "UPS-MIB (RFC 1628)");
    }

    /** @throws Invalid naming every row that cannot be taken, the first twenty, then how many more */
    public static ReadIn read(String text, About about) {
        UpsMib reader = new UpsMib(about);
        int number = 0;
        for (String line : (Iterable<String>) text.lines()::iterator) {
            number++;
            String bare = line.strip();
            String place = "row " + number;
            if (!bare.isEmpty() && !bare.startsWith("#")) {
                reader.problems.keep(() -> reader.line(place, bare));
            }
        }
        reader.problems.throwIfAny();
        if (reader.rows.isEmpty()) {
            throw new Invalid("row 1", "There is no value: give lines such as upsBatteryVoltage.0 = 274.");
        }
        reader.rows.forEach(row -> reader.problems.keep(() -> reader.take(row)));
        reader.problems.throwIfAny();
        return reader.draft.done();
    }

    private void line(String place, String line) {
        Matcher m = LINE.matcher(line.length() <= LONGEST_LINE ? line : "");
        if (!m.matches()) {
            throw new Invalid(
                    place,
                    line.startsWith(".") || line.startsWith("1.")
                            ? "Give the object by its name, such as upsBatteryVoltage.0, not by its number."
                            : "Write an object, = or :, and its value, such as upsBatteryVoltage.0 = 274.");
        }
        String name = m.group("name");
        String module = m.group("module");
        if ((module != null && !module.equals("UPS-MIB")) || !UpsObject.isKnown(name)) {
            throw new Invalid(
                    place,
                    "'" + (module == null ? "" : module + "::") + name + "' is no object of RFC 1628. The nearest is "
                            + Spelling.nearest(name, UpsObject.names()) + ".");
        }
        Row row = new Row(place, name, index(place, name, m.group("index")), m.group("value"));
        if (!seen.add(row.object())) {
            throw new Invalid(place, row.object() + " stands here a second time.");
        }
        rows.add(row);
        UpsObject object = UpsObject.NUMBERS.get(name);
        if (object != null && !absent(row)) {
            numbers.put(row.object(), number(row, object));
        }
    }

    private static int index(String place, String name, @Nullable String given) {
        UpsObject object = UpsObject.NUMBERS.get(name);
        boolean lines = object == null ? name.equals(UpsObject.ALARM) : object.lines();
        int index = given == null ? (lines ? 1 : 0) : Integer.parseInt(given);
        if (lines && index == 0) {
            throw new Invalid(place, "Lines of " + name + " are counted from 1: there is no " + name + ".0.");
        }
        if (!lines && object != null && index != 0) {
            throw new Invalid(place, name + " is there once only: write " + name + ".0.");
        }
        return index;
    }

    private static boolean absent(Row row) {
        return ABSENT.matcher(row.value()).matches();
    }

    private static long number(Row row, UpsObject object) {
        Matcher m = WHOLE.matcher(row.value());
        if (!m.matches()) {
            throw new Invalid(
                    row.place(),
                    "A whole number" + (object.clause().isEmpty() ? "" : " in units of " + object.clause())
                            + " is needed, not '" + row.value() + "'.");
        }
        String clause = m.group(2);
        if (clause != null && !clause.equalsIgnoreCase(object.clause())) {
            throw new Invalid(
                    row.place(),
                    "'" + clause + "' is not the unit of " + object.name() + ": "
                            + (object.clause().isEmpty() ? "it has none." : "that is " + object.clause() + "."));
        }
        long value = Long.parseLong(m.group(1));
        if (value < object.least() || value > object.most()) {
            throw new Invalid(
                    row.place(),
                    value + " is not possible: " + object.name() + " runs from " + object.least() + " to "
                            + object.most() + ".");
        }
        return value;
    }

    private void take(Row row) {
        UpsObject object = UpsObject.NUMBERS.get(row.name());
        Long number = numbers.get(row.object());
        List<String> labels = UpsObject.ENUMERATIONS.get(row.name());
        if (absent(row)) {
            draft.skip(row.object() + ": the UPS does not tell it.");
        } else if (object != null && number != null && !object.unit().isEmpty()) {
            reading(row, object, number);
        } else if (row.name().equals(UpsObject.ALARM)) {
            draft.finding("Alarm: " + alarm(row.value()) + ".", false);
        } else if (labels != null) {
            status(row, label(row, labels));
        } else {
            draft.skip(row.object() + ": " + row.value() + ", which is no reading.");
        }
    }

    private void reading(Row row, UpsObject object, long number) {
        String point = object.lines() ? object.part() + " " + row.index() : object.part();
        draft.reading(row.place(), object.quantity(), scaled(number, object), object.unit(), point, bounds(object));
        if (object.name().equals("upsAlarmsPresent") && number > 0) {
            draft.finding(number + (number == 1 ? " alarm is" : " alarms are") + " present (upsAlarmsPresent).", false);
        }
    }

    private static BigDecimal scaled(long number, UpsObject object) {
        return BigDecimal.valueOf(number, object.decimals());
    }

    private Bounds bounds(UpsObject object) {
        return switch (object.name()) {
            case "upsInputVoltage" -> own("upsConfigLowVoltageTransferPoint", "upsConfigHighVoltageTransferPoint");
            case "upsOutputPower" -> own(null, "upsConfigOutputPower");
            case "upsEstimatedMinutesRemaining" -> own("upsConfigLowBattTime", null);
            case "upsOutputPercentLoad" -> Bounds.atMost(100, "the UPS's own capacity (RFC 1628 upsOutputPercentLoad)");
            case "upsAlarmsPresent" -> Bounds.atMost(0, "no alarm (RFC 1628 upsAlarmsPresent)");
            default -> Bounds.NONE;
        };
    }

    /** Limits that the UPS tells itself; a transfer point of 0 is one that is not set. */
    private Bounds own(@Nullable String lower, @Nullable String upper) {
        BigDecimal least = own(lower);
        BigDecimal most = own(upper);
        if (least == null && most == null) {
            return Bounds.NONE;
        }
        if (least != null && most != null && least.compareTo(most) > 0) {
            return Bounds.NONE;
        }
        String names = least == null ? upper : most == null ? lower : lower + ", " + upper;
        return new Bounds(least, most, "the UPS's own setting (" + names + ")");
    }

    private @Nullable BigDecimal own(@Nullable String name) {
        UpsObject object = name == null ? null : UpsObject.NUMBERS.get(name);
        Long number = numbers.get(name + ".0");
        return object == null || number == null || number == 0 ? null : scaled(number, object);
    }

    /** @throws Invalid if name and number do not belong together */
    private static String label(Row row, List<String> labels) {
        Matcher m = ENUM.matcher(row.value());
        String label = m.matches() ? m.group("label") : null;
        String digits = !m.matches() ? null : label == null ? m.group("number") : m.group("in");
        int number = digits == null ? labels.indexOf(label) + 1 : Integer.parseInt(digits);
        boolean known = number >= 1 && number <= labels.size();
        if (!known || (label != null && !labels.get(number - 1).equals(label))) {
            throw new Invalid(
                    row.place(),
                    "'" + row.value() + "' is no value of " + row.name() + ": it has " + all(labels) + ".");
        }
        return labels.get(number - 1);
    }

    private static String all(List<String> labels) {
        List<String> all = new ArrayList<>();
        for (int i = 0; i < labels.size(); i++) {
            all.add(labels.get(i) + "(" + (i + 1) + ")");
        }
        return String.join(", ", all);
    }

    private void status(Row row, String label) {
        String sentence = switch (row.name() + " " + label) {
            case "upsBatteryStatus unknown" -> "The state of the battery is not known";
            case "upsBatteryStatus batteryLow" -> "The battery is low";
            case "upsBatteryStatus batteryDepleted" -> "The battery is depleted";
            case "upsOutputSource other" -> "The output is fed from a source that is not named";
            case "upsOutputSource none" -> "The output is off";
            case "upsOutputSource bypass" -> "The output is on bypass: the load is not backed up";
            case "upsOutputSource battery" -> "The output is fed from the battery";
            case "upsOutputSource booster" -> "The input voltage is being raised";
            case "upsOutputSource reducer" -> "The input voltage is being lowered";
            case "upsTestResultsSummary doneWarning" -> "The last self-test ended with a warning";
            case "upsTestResultsSummary doneError" -> "The last self-test failed";
            case "upsTestResultsSummary aborted" -> "The last self-test was broken off";
            default -> "";
        };
        if (sentence.isEmpty()) {
            draft.skip(row.object() + ": " + label + ", which is no reading.");
        } else {
            draft.finding(sentence + " (" + row.name() + " " + label + ").", false);
        }
    }

    /** The alarm in words, from its name or its number. */
    private static String alarm(String value) {
        String name = value.replaceFirst("^UPS-MIB::", "");
        String arc = value.replaceFirst("^\\.", "");
        if (arc.matches(Pattern.quote(ALARM_ARC) + "[0-9]{1,2}")) {
            int number = Integer.parseInt(arc.substring(ALARM_ARC.length()));
            name = number >= 1 && number <= UpsObject.ALARMS.size() ? UpsObject.ALARMS.get(number - 1) : name;
        }
        return UpsObject.ALARMS.contains(name)
                ? name.substring("upsAlarm".length())
                                .replaceAll("(?<=[a-z])(?=[A-Z])", " ")
                                .toLowerCase(Locale.ROOT)
                        + " (" + name + ")"
                : "one that is not of RFC 1628, " + value;
    }
}
