package org.benchtrail.packaged;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** What was measured, in plain aligned text. */
final class SpeedTable {
    private static final String ROW = "%-34s %8s %8s %8s %8s %7s  %s%n";

    private final List<String> lines = new ArrayList<>();
    private final Map<String, Map<Integer, Double>> growth = new LinkedHashMap<>();

    private static String number(double value) {
        return String.format(Locale.ROOT, value < 10 ? "%.2f" : "%.1f", value);
    }

    private void row(String... cells) {
        lines.add(String.format(Locale.ROOT, ROW, (Object[]) cells));
    }

    /** @param ratio to what stands beside it in the same run, as is said below the table; NaN if nothing does */
    void add(String what, SpeedFigures figures, double ratio, String wanted) {
        row(
                what,
                number(figures.percentile(50)),
                number(figures.percentile(95)),
                number(figures.percentile(99)),
                number(figures.perSecond()),
                Double.isNaN(ratio) ? "-" : number(ratio),
                wanted);
    }

    /** Something that happens once. */
    void once(String what, double ms, String wanted) {
        row(what, number(ms), "-", "-", "-", "-", wanted);
    }

    /** Something of which only the number a second is known. */
    void rate(String what, double perSecond) {
        row(what, "-", "-", "-", Double.isNaN(perSecond) ? "-" : number(perSecond), "-", "-");
    }

    void grown(String what, int tickets, SpeedFigures figures) {
        growth.computeIfAbsent(what, w -> new TreeMap<>()).put(tickets, figures.percentile(95));
    }

    /** Both tables. */
    String text(int tickets, String beside) {
        StringBuilder text = new StringBuilder();
        text.append(String.format(Locale.ROOT, "%nSpeed with %,d tickets%n", tickets));
        text.append(String.format(Locale.ROOT, ROW, "what (ms)", "p50", "p95", "p99", "a second", "ratio", "wanted"));
        lines.forEach(text::append);
        text.append(beside);
        text.append(String.format(Locale.ROOT, "%nGrowth: p95 in ms%n%-34s", "tickets"));
        growth.values().stream()
                .findFirst()
                .ifPresent(first ->
                        first.keySet().forEach(size -> text.append(String.format(Locale.ROOT, " %,10d", size))));
        text.append(System.lineSeparator());
        growth.forEach((what, sizes) -> {
            text.append(String.format(Locale.ROOT, "%-34s", what));
            sizes.values().forEach(p95 -> text.append(String.format(Locale.ROOT, " %10s", number(p95))));
            text.append(System.lineSeparator());
        });
        return text.toString();
    }
}
