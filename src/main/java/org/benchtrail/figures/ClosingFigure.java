package org.benchtrail.figures;

import io.quarkus.qute.RawString;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.benchtrail.core.figures.Baseline;
import org.benchtrail.core.figures.ClosingTimes;
import org.benchtrail.core.figures.ClosingTimes.Closing;
import org.benchtrail.core.figures.Level;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.site.SiteHistory;
import org.benchtrail.core.statistics.ChartRule;
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
    static final String ID = "closings";

    /** So many are drawn; the latest. */
    static final int MOST = 60;

    private final List<FigureRows.Closing> inOrder;
    private final ClosingTimes times;
    private final ZoneId zone;

    private ClosingFigure(List<FigureRows.Closing> inOrder, ClosingTimes times, ZoneId zone) {
        this.inOrder = inOrder;
        this.times = times;
        this.zone = zone;
    }

    /**
     * @param latest closings, the latest first
     * @param frozen limits, in the order in which they were frozen
     */
    static Figure of(List<FigureRows.Closing> latest, List<Baseline> frozen, SiteHistory site, ZoneId zone) {
        List<FigureRows.Closing> inOrder = new ArrayList<>(latest);
        Collections.reverse(inOrder);
        List<Closing> closings =
                inOrder.stream().map(c -> ChartBaselines.closing(c, site)).toList();
        return new ClosingFigure(inOrder, ClosingTimes.of(closings, frozen), zone).figure();
    }

    private Figure figure() {
        return new Figure(
                ID,
                "Each closing, one after the other",
                says(),
                isDrawn() ? drawn() : null,
                few(),
                List.of(
                        Head.words("Ticket"),
                        Head.words("Closed"),
                        Head.number("Working time [h]"),
                        Head.words("Against the limits")),
                IntStream.range(0, inOrder.size()).mapToObj(this::row).toList(),
                unusual());
    }

    private Row row(int i) {
        FigureRows.Closing closing = inOrder.get(i);
        ClosingTimes.Point point = times.points().get(i);
        return new Row(
                number(i) + "/" + closing.closed(),
                List.of(number(i), Moments.text(closing.closed(), zone), Figure.hours(point.hours()), word(point)),
                List.of(closing.serial()));
    }

    private String number(int i) {
        return new TicketNumber(inOrder.get(i).serial()).toString();
    }

    private static String word(ClosingTimes.Point point) {
        return Stream.of(ChartRule.values())
                .filter(point.broken()::contains)
                .map(ClosingFigure::word)
                .collect(Collectors.joining(", "));
    }

    private static String word(ChartRule rule) {
        return switch (rule) {
            case BEYOND_THREE -> "outside";
            case TWO_OF_THREE -> "second of three far out";
            case FOUR_OF_FIVE -> "fourth of five off the middle";
            case EIGHT_IN_A_ROW -> "eighth or more in a row";
        };
    }

    /** Each closing outside by itself; of every other rule and side the latest. */
    private List<String> unusual() {
        List<String> lines = new ArrayList<>();
        for (int i = 0; i < times.points().size(); i++) {
            ClosingTimes.Point point = times.points().get(i);
            if (point.broken().contains(ChartRule.BEYOND_THREE)) {
                lines.add("Ticket " + number(i) + " took " + inWords(point.hours()) + ", outside the usual limits.");
            }
        }
        for (ChartRule rule : ChartRule.values()) {
            if (rule != ChartRule.BEYOND_THREE) {
                latest(rule, true).ifPresent(lines::add);
                latest(rule, false).ifPresent(lines::add);
            }
        }
        return lines;
    }

    private Optional<String> latest(ChartRule rule, boolean slow) {
        return IntStream.range(0, times.points().size())
                .filter(i -> times.points().get(i).broken().contains(rule)
                        && times.points().get(i).isSlow() == slow)
                .boxed()
                .reduce((before, after) -> after)
                .map(i -> many(rule) + (slow ? " longer than usual" : " less time than usual") + ", up to ticket "
                        + number(i) + ".");
    }

    private static String many(ChartRule rule) {
        return switch (rule) {
            case BEYOND_THREE -> "One closing took";
            case TWO_OF_THREE -> "Two of three closings in a row took much";
            case FOUR_OF_FIVE -> "Four of five closings in a row took";
            case EIGHT_IN_A_ROW -> "Eight or more closings in a row took";
        };
    }

    private static String inWords(double hours) {
        return hours < Figure.LEAST_HOURS ? "no working time" : Figure.hours(hours) + " working hours";
    }

    private boolean isDrawn() {
        return times.isJudged() && times.points().size() > 1;
    }

    private String few() {
        int closed = times.points().size();
        if (isDrawn()) {
            return "";
        }
        if (times.frozen()) {
            return closed == 0
                    ? "No ticket was closed."
                    : times.isJudged()
                            ? "One closing: it is drawn from the second on."
                            : "All of these closings are older than the limits that were frozen.";
        }
        return closed < Level.PROVISIONAL
                ? closed + " closed tickets of " + Level.ENOUGH + " needed; first limits are drawn from "
                        + Level.PROVISIONAL + " on."
                : "All took the same time: nothing varies.";
    }

    private String says() {
        String which = times.points().size() < MOST ? "" : "The latest " + MOST + " closings of the period. ";
        String what = which + "Working hours from opening, or reopening, to closing.";
        if (!times.isJudged()) {
            return what;
        }
        String whence = times.frozen()
                ? " The limits are frozen, and stand below: each closing is held against those of its time."
                : " The limits come from these closings, by the logarithm of the hours, and move with them until some are"
                        + " frozen.";
        String worth = times.isProvisional()
                ? " They are provisional: they come from fewer than " + Level.ENOUGH + " closings."
                : "";
        return what + whence + worth + " Worth a look: " + times.rules().words() + ".";
    }

    private RawString drawn() {
        List<Series> series = new ArrayList<>();
        series.add(level("upper limit", Kind.LIMIT, Level::upper));
        series.add(level("middle", Kind.IDEAL, Level::middle));
        series.add(level("lower limit", Kind.LIMIT, Level::lower));
        series.add(new Series(
                "one closing",
                Kind.DOTS,
                IntStream.range(0, times.points().size())
                        .mapToObj(i -> Point.at(i + 1, times.points().get(i).hours()))
                        .toList()));
        return SvgChart.draw(new Chart("closings, in order", "working time, h", series));
    }

    /** A line that is level while the same limits count; lettered with the latest. */
    private Series level(String title, Kind kind, ToDoubleFunction<Level> height) {
        List<Point> line = new ArrayList<>();
        double last = 0;
        for (int i = 0; i < times.points().size(); i++) {
            Level level = times.points().get(i).level();
            if (level != null) {
                last = height.applyAsDouble(level);
                line.add(Point.at(i + 1, last));
            }
        }
        return new Series(title + " " + Figure.number(last) + " h", kind, line);
    }
}
