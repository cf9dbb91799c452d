package org.benchtrail.figures;

import io.quarkus.qute.RawString;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.benchtrail.core.figures.HeldShares;
import org.benchtrail.core.figures.ShareBaseline;
import org.benchtrail.core.figures.ShareOverTime;
import org.benchtrail.core.statistics.SpreadChart;
import org.benchtrail.figures.Figure.Head;
import org.benchtrail.figures.Figure.Row;
import org.benchtrail.platform.chart.Chart;
import org.benchtrail.platform.chart.Chart.Kind;
import org.benchtrail.platform.chart.Chart.Point;
import org.benchtrail.platform.chart.Chart.Series;
import org.benchtrail.platform.chart.SvgChart;

/** How often a ticket is not closed by its due time, week by week, against limits that were frozen. */
final class HeldWeeksFigure {
    private final List<List<FigureRows.Ticket>> weeks;
    private final LocalDate monday;
    private final HeldShares held;

    private HeldWeeksFigure(List<List<FigureRows.Ticket>> weeks, LocalDate monday, HeldShares held) {
        this.weeks = weeks;
        this.monday = monday;
        this.held = held;
    }

    /**
     * @param monday of the first week
     * @param frozen at least one, in the order in which they were frozen
     */
    static Figure of(List<List<FigureRows.Ticket>> weeks, LocalDate monday, ZoneId zone, List<ShareBaseline> frozen) {
        List<Instant> begins = IntStream.rangeClosed(0, weeks.size())
                .mapToObj(i -> monday.plusWeeks(i).atStartOfDay(zone).toInstant())
                .toList();
        return new HeldWeeksFigure(
                        weeks,
                        monday,
                        HeldShares.of(weeks.stream().map(LateFigures::count).toList(), begins, frozen))
                .figure();
    }

    private Figure figure() {
        List<Row> rows = held.points().stream().map(this::row).toList();
        boolean drawn = held.isJudged() && held.points().size() > 1;
        return new Figure(
                LateFigures.WEEKS,
                "Not closed by the due time, week by week",
                LateFigures.WEEK
                        + " The limits are frozen, and stand below: each week is held against those of its time.",
                drawn ? drawn() : null,
                few(drawn),
                List.of(
                        Head.words("Opened"),
                        Head.number("Due time over"),
                        Head.number("Not closed by then"),
                        Head.number("Share [%]"),
                        Head.words("Frozen limits [%]"),
                        Head.words("Against the limits")),
                rows,
                LateFigures.unusual(rows));
    }

    private String few(boolean drawn) {
        if (drawn) {
            return "";
        }
        return held.points().isEmpty()
                ? "No ticket's due time is over."
                : held.isJudged()
                        ? "One week: it is drawn from the second on."
                        : "All of these weeks are older than the limits that were frozen.";
    }

    private Row row(HeldShares.Point point) {
        ShareOverTime.Group group = point.group();
        SpreadChart.Limits limits = point.limits();
        return new Row(
                monday.plusWeeks(group.first()).toString(),
                List.of(
                        LateFigures.days(monday, group.first(), group.last()),
                        String.valueOf(group.count().of()),
                        String.valueOf(group.count().hits()),
                        Figure.percent(group.count().share().share()),
                        limits == null ? "" : Figure.percent(limits.lower()) + " to " + Figure.percent(limits.upper()),
                        point.isOutside() ? "outside" : ""),
                LateFigures.late(weeks.subList(group.first(), group.last() + 1).stream()
                        .flatMap(List::stream)
                        .toList()));
    }

    private RawString drawn() {
        return SvgChart.draw(new Chart(
                "weeks or joined weeks, in order",
                "not closed by the due time, %",
                List.of(
                        line("upper limit", Kind.LIMIT, p -> limits(p).upper()),
                        line(
                                "usual share",
                                Kind.IDEAL,
                                p -> Objects.requireNonNull(p.by()).target()),
                        line("lower limit", Kind.LIMIT, p -> limits(p).lower()),
                        LateFigures.series(
                                "one week, or several joined",
                                Kind.DOTS,
                                held.points().size(),
                                i -> held.points()
                                        .get(i)
                                        .group()
                                        .count()
                                        .share()
                                        .share()))));
    }

    private static SpreadChart.Limits limits(HeldShares.Point point) {
        return Objects.requireNonNull(point.limits());
    }

    /** Where there are limits. */
    private Series line(String title, Kind kind, ToDoubleFunction<HeldShares.Point> height) {
        List<Point> line = new ArrayList<>();
        for (int i = 0; i < held.points().size(); i++) {
            HeldShares.Point point = held.points().get(i);
            if (point.by() != null) {
                line.add(Point.at(i + 1, 100 * height.applyAsDouble(point)));
            }
        }
        return new Series(title, kind, line);
    }
}
