package org.benchtrail.core.site;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.measure.Limit;
import org.benchtrail.core.measure.Quantity;
import org.benchtrail.core.measure.Unit;
import org.benchtrail.core.measure.Units;

/** The limits on the nameplate of a device, a line for each: {@code Input voltage: 100 to 240 V}, {@code Load: at most 1500 W}. */
public record Nameplate(List<Line> lines) {
    private static final int MOST = 40;
    private static final Pattern BOTH = Pattern.compile("(-?[\\d.,]+) *(?:to|\\.\\.) *(-?[\\d.,]+) *(\\S.*)");
    private static final Pattern ONE =
            Pattern.compile("at (most|least) +(-?[\\d.,]+) *(\\S.*)", Pattern.CASE_INSENSITIVE);

    public Nameplate {
        lines = List.copyOf(lines);
    }

    /** What is measured, and the limit. */
    public record Line(String quantity, Limit limit) {
        boolean isOf(String measured) {
            return bare(quantity).equals(bare(measured));
        }
    }

    /**
     * @param source what the limits are said to come from, such as "nameplate of PC-14"
     * @throws Invalid on {@code nameplate}, with a sentence for each line that is not understood
     */
    public static Nameplate parse(String text, String source) {
        List<Line> lines = new ArrayList<>();
        Invalid.Collector problems = new Invalid.Collector();
        for (String line :
                text.lines().map(String::strip).filter(l -> !l.isEmpty()).toList()) {
            try {
                lines.add(line(line, source));
            } catch (Invalid e) {
                problems.require(
                        false,
                        "nameplate",
                        "'" + (line.length() > 60 ? line.substring(0, 60) : line)
                                + "' is not understood. Write Input voltage: 100 to 240 V, or Load: at most 1500 W.");
            }
        }
        problems.require(lines.size() <= MOST, "nameplate", "Give at most 40 limits.")
                .throwIfAny();
        return new Nameplate(lines);
    }

    private static Line line(String line, String source) {
        int colon = line.lastIndexOf(':');
        String quantity = colon < 0 ? "" : line.substring(0, colon).strip();
        String limit = line.substring(colon + 1).strip();
        Matcher both = BOTH.matcher(limit);
        Matcher one = ONE.matcher(limit);
        if (quantity.isEmpty() || quantity.length() > 100) {
            throw new Invalid("nameplate", line);
        }
        if (one.matches()) {
            Unit unit = Units.read("nameplate", one.group(3));
            Quantity bound = Quantity.parse("nameplate", one.group(2), unit);
            boolean most = one.group(1).equalsIgnoreCase("most");
            return new Line(quantity, Limit.of(most ? null : bound.value(), most ? bound.value() : null, unit, source));
        }
        if (both.matches()) {
            Unit unit = Units.read("nameplate", both.group(3));
            return new Line(
                    quantity,
                    Limit.of(
                            Quantity.parse("nameplate", both.group(1), unit).value(),
                            Quantity.parse("nameplate", both.group(2), unit).value(),
                            unit,
                            source));
        }
        throw new Invalid("nameplate", line);
    }

    /** The limit of what is measured, however it is written; empty if the nameplate names none. */
    public Optional<Limit> of(String quantity) {
        return lines.stream().filter(l -> l.isOf(quantity)).map(Line::limit).findFirst();
    }

    /** As it is typed. */
    public String text() {
        return lines.stream().map(Nameplate::text).collect(Collectors.joining("\n"));
    }

    private static String text(Line line) {
        Limit limit = line.limit();
        String unit = " " + limit.unit().symbol();
        String low = limit.lower().map(BigDecimal::toPlainString).orElse("");
        String high = limit.upper().map(BigDecimal::toPlainString).orElse("");
        String bounds = low.isEmpty() ? "at most " + high : high.isEmpty() ? "at least " + low : low + " to " + high;
        return line.quantity() + ": " + bounds + unit;
    }

    private static String bare(String quantity) {
        return quantity.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}+-]+", "");
    }
}
