package org.benchtrail.catalogue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Learned;
import org.benchtrail.core.diagnosis.Model;

/**
 * A figure that differs between two versions.
 *
 * @param cause in words; all that do not touch the finding are one line
 * @param finding in words; empty for the prior of the cause
 * @param value of the finding; empty for a prior
 * @param needsApproval whether it moves so far that somebody has to agree to it
 */
public record ShiftLine(
        String category,
        String cause,
        String finding,
        String value,
        double before,
        double after,
        boolean needsApproval) {
    private static final double SIZE_OF_ROUNDING = 1e-12;
    private static final double TRACE = 1e-9;
    /** What differs by no more than a trace is alike, and stands by its words: sums of cases end on other last digits each time. */
    static final Comparator<ShiftLine> LARGEST_FIRST = Comparator.comparingDouble(
                    (ShiftLine line) -> -Math.rint(line.size() / TRACE))
            .thenComparing(ShiftLine::category)
            .thenComparing(ShiftLine::finding)
            .thenComparing(ShiftLine::cause)
            .thenComparing(ShiftLine::value);

    private static final String ANY_OTHER = "any cause that does not touch it";

    /** What differs, the largest first. Categories that only one of them has are not compared. */
    public static List<ShiftLine> between(Map<String, Learned> before, Map<String, Learned> after) {
        List<ShiftLine> all = new ArrayList<>();
        new TreeMap<>(after).forEach((id, figures) -> {
            Learned old = before.get(id);
            if (old != null && !old.equals(figures)) {
                figures.shiftsFrom(old).forEach(s -> add(all, figures.category(), s));
            }
        });
        all.sort(LARGEST_FIRST);
        return all;
    }

    private static void add(List<ShiftLine> all, CauseCategory c, Learned.Shift s) {
        boolean moves = Math.abs(s.after() - s.before()) > SIZE_OF_ROUNDING;
        if (!moves || isMirrored(c, s)) {
            return;
        }
        ShiftLine line = new ShiftLine(
                c.title(),
                isBackground(c, s) ? ANY_OTHER : names(c).getOrDefault(s.cause(), s.cause()),
                questions(c).getOrDefault(s.finding(), s.finding()),
                s.value(),
                s.before(),
                s.after(),
                s.needsApproval());
        if (!all.contains(line)) {
            all.add(line);
        }
    }

    /** Of two answers the second says it all: the first moves as far the other way. */
    private static boolean isMirrored(CauseCategory c, Learned.Shift s) {
        return c.findings().stream()
                .anyMatch(f -> f.id().equals(s.finding())
                        && f.values().size() == 2
                        && f.values().get(0).equals(s.value()));
    }

    /** Whether the cause does not touch the finding, which then moves alike for all such causes. */
    private static boolean isBackground(CauseCategory c, Learned.Shift s) {
        return !s.finding().isEmpty()
                && c.causes().stream()
                        .filter(x -> x.id().equals(s.cause()))
                        .flatMap(x -> x.deviations().stream())
                        .noneMatch(d -> d.finding().equals(s.finding()));
    }

    private static Map<String, String> names(CauseCategory c) {
        Map<String, String> names = c.causes().stream().collect(Collectors.toMap(x -> x.id(), x -> x.name()));
        names.put(Model.UNLISTED, "something not listed");
        return names;
    }

    private static Map<String, String> questions(CauseCategory c) {
        return c.findings().stream().collect(Collectors.toMap(f -> f.id(), f -> f.label()));
    }

    /** Which figure it is. */
    String words() {
        String of = finding.isEmpty() ? cause : finding + ": " + value + ", if it is " + cause;
        return category + ": " + of + (needsApproval ? " (a large change)" : "");
    }

    public double size() {
        return Math.abs(after - before);
    }

    public String beforeText() {
        return Percent.text(before);
    }

    public String afterText() {
        return Percent.text(after);
    }

    /** Percentage points, signed. */
    public String moveText() {
        return Percent.points(after - before);
    }
}
