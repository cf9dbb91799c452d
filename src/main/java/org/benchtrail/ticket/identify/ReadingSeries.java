package org.benchtrail.ticket.identify;

import io.quarkus.qute.RawString;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.platform.chart.Chart;
import org.benchtrail.platform.chart.Chart.Kind;
import org.benchtrail.platform.chart.Chart.Point;
import org.benchtrail.platform.chart.Chart.Series;
import org.benchtrail.platform.chart.SvgChart;
import org.jspecify.annotations.Nullable;

/**
 * Readings of one quantity at one point in one unit, three or more: what they come to is seen in a chart with the limits of the
 * last of them.
 *
 * @param drawing of the values over the time since the first of them
 */
public record ReadingSeries(String title, RawString drawing, List<EvidenceView.Reading> readings) {
    private static final int LEAST = 3;

    /** Entry of the last reading. */
    public int last() {
        return readings.get(readings.size() - 1).entry();
    }

    /** What makes readings one series. */
    private record Key(String quantity, String point, String unit) {
        static Key of(ReadingRecorded r) {
            return new Key(r.quantity(), r.point(), r.unit());
        }
    }

    public static List<ReadingSeries> all(List<StandingFact<ReadingRecorded>> readings) {
        Map<Key, List<StandingFact<ReadingRecorded>>> alike = new LinkedHashMap<>();
        readings.forEach(r ->
                alike.computeIfAbsent(Key.of(r.fact()), k -> new ArrayList<>()).add(r));
        return alike.values().stream()
                .filter(group -> group.size() >= LEAST)
                .map(ReadingSeries::of)
                .toList();
    }

    private static ReadingSeries of(List<StandingFact<ReadingRecorded>> group) {
        ReadingRecorded last = group.get(group.size() - 1).fact();
        return new ReadingSeries(
                last.quantity() + ", " + last.point(),
                SvgChart.draw(chart(group, last)),
                group.stream().map(EvidenceView.Reading::of).toList());
    }

    /** Over hours; over the count of readings if they were all recorded within a minute. */
    static Chart chart(List<StandingFact<ReadingRecorded>> group, ReadingRecorded last) {
        Instant first = group.get(0).stamp().at();
        Duration span =
                Duration.between(first, group.get(group.size() - 1).stamp().at());
        boolean timed = span.compareTo(Duration.ofMinutes(1)) >= 0;
        List<Point> points = new ArrayList<>();
        for (StandingFact<ReadingRecorded> r : group) {
            double hours = Duration.between(first, r.stamp().at()).toSeconds() / 3600.0;
            points.add(Point.at(
                    timed ? hours : points.size() + 1,
                    Double.parseDouble(r.fact().value())));
        }
        List<Series> series = new ArrayList<>();
        series.add(new Series(last.quantity() + ", " + group.size() + " readings", Kind.DOTS, points));
        double from = points.get(0).x();
        double to = points.get(points.size() - 1).x();
        limit(series, "at least ", last.lower(), last.unit(), from, to);
        limit(series, "at most ", last.upper(), last.unit(), from, to);
        return new Chart(timed ? "hours since the first" : "reading", "in " + last.unit(), series);
    }

    private static void limit(
            List<Series> series, String words, @Nullable String limit, String unit, double from, double to) {
        if (limit != null) {
            double y = Double.parseDouble(limit);
            series.add(new Series(words + limit + " " + unit, Kind.LIMIT, List.of(Point.at(from, y), Point.at(to, y))));
        }
    }
}
