package org.benchtrail.figures;

import io.quarkus.qute.RawString;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.benchtrail.core.figures.ClosingTimes;
import org.benchtrail.core.figures.TicketTimes;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.site.SiteHistory;
import org.benchtrail.core.statistics.Runs;
import org.benchtrail.figures.Figure.Head;
import org.benchtrail.figures.Figure.Row;
import org.benchtrail.platform.Moments;
import org.benchtrail.platform.chart.Chart;
import org.benchtrail.platform.chart.Chart.Kind;
import org.benchtrail.platform.chart.Chart.Point;
import org.benchtrail.platform.chart.Chart.Series;
import org.benchtrail.platform.chart.SvgChart;

/** One closing after the other: how long each took, against what is usual. */
final class ClosingFigure {
    /** So many are drawn; the latest. */
    static final int MOST = 60;

    private ClosingFigure() {}

    /** @param latest closings, the latest first */
    static Figure of(List<FigureRows.Closing> latest, SiteHistory site, ZoneId zone) {
        List<FigureRows.Closing> inOrder = new ArrayList<>(latest);
        java.util.Collections.reverse(inOrder);
        ClosingTimes times =
                ClosingTimes.of(inOrder.stream().map(c -> hours(c, site)).toList());
        List<Row> rows = new ArrayList<>();
        List<String> unusual = new ArrayList<>();
        for (int i = 0; i < inOrder.size(); i++) {
            FigureRows.Closing closing = inOrder.get(i);
            String number = new TicketNumber(closing.serial()).toString();
            String word = word(times, i);
            rows.add(new Row(
                    number + "/" + closing.closed(),
                    List.of(
                            number,
                            Moments.text(closing.closed(), zone),
                            Figure.hours(times.hours().get(i)),
                            word),
                    List.of(closing.serial())));
            if (times.outside().contains(i)) {
                unusual.add(
                        "Ticket " + number + " took " + inWords(times.hours().get(i)) + ", outside the usual limits.");
            }
        }
        told(times).ifPresent(unusual::add);
        return new Figure(
                "closings",
                "Each closing, one after the other",
                says(times),
                times.limits() == null ? null : drawn(times),
                few(times),
                List.of(
                        Head.words("Ticket"),
                        Head.words("Closed"),
                        Head.number("Working time [h]"),
                        Head.words("Against the limits")),
                rows,
                unusual);
    }

    private static Optional<String> told(ClosingTimes times) {
        return times.runs().isEmpty()
                ? Optional.empty()
                : Optional.of("Eight or more closings in a row took "
                        + (isSlow(times) ? "longer than usual." : "less time than usual."));
    }

    private static String inWords(double hours) {
        return hours < Figure.LEAST_HOURS ? "no working time" : Figure.hours(hours) + " working hours";
    }

    /** Of the way that ended with this closing. */
    private static double hours(FigureRows.Closing closing, SiteHistory site) {
        TicketTimes times = closing.times();
        Instant at = closing.closed();
        return times.ways().stream()
                .filter(w -> at.equals(w.to()))
                .findFirst()
                .map(w -> times.hours(w, site, at))
                .orElse(0.0);
    }

    private static boolean isSlow(ClosingTimes times) {
        ClosingTimes.Limits limits = times.limits();
        int last = times.runs().get(times.runs().size() - 1);
        return limits != null && times.hours().get(last) > limits.centre();
    }

    private static String word(ClosingTimes times, int at) {
        return times.outside().contains(at) ? "outside" : times.runs().contains(at) ? "eighth or more in a row" : "";
    }

    private static String few(ClosingTimes times) {
        int closed = times.hours().size();
        return closed < ClosingTimes.PROVISIONAL
                ? closed + " closed tickets of " + ClosingTimes.ENOUGH + " needed; first limits are drawn from "
                        + ClosingTimes.PROVISIONAL + " on."
                : times.limits() == null ? "All took the same time: nothing varies." : "";
    }

    private static String says(ClosingTimes times) {
        String which = times.hours().size() < MOST ? "" : "The latest " + MOST + " closings of the period. ";
        String what = which + "Working hours from opening, or reopening, to closing.";
        if (times.limits() == null) {
            return what;
        }
        String worth = times.isProvisional()
                ? "The limits are provisional: they come from fewer than " + ClosingTimes.ENOUGH + " closings. "
                : "";
        return what + " The limits come from these closings, by the logarithm of the hours. " + worth
                + "A point outside, or " + Runs.LONG
                + " in a row on one side of the middle, is worth a look: with these rules about one false alarm in "
                + Runs.BETWEEN_FALSE_ALARMS + " points.";
    }

    private static RawString drawn(ClosingTimes times) {
        ClosingTimes.Limits limits = java.util.Objects.requireNonNull(times.limits());
        int last = times.hours().size();
        return SvgChart.draw(new Chart(
                "closings, in order",
                "working time, h",
                List.of(
                        level("upper limit " + Figure.number(limits.upper()) + " h", Kind.LIMIT, limits.upper(), last),
                        level("middle " + Figure.number(limits.centre()) + " h", Kind.IDEAL, limits.centre(), last),
                        level("lower limit " + Figure.number(limits.lower()) + " h", Kind.LIMIT, limits.lower(), last),
                        new Series(
                                "one closing",
                                Kind.DOTS,
                                IntStream.range(0, last)
                                        .mapToObj(i ->
                                                Point.at(i + 1, times.hours().get(i)))
                                        .toList()))));
    }

    private static Series level(String title, Kind kind, double at, int last) {
        return new Series(title, kind, List.of(Point.at(1, at), Point.at(last, at)));
    }
}
