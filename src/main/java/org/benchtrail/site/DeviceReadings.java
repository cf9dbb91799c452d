package org.benchtrail.site;

import io.quarkus.qute.RawString;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.DoubleStream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.measure.Limit;
import org.benchtrail.core.measure.Unit;
import org.benchtrail.core.measure.Units;
import org.benchtrail.core.site.Nameplate;
import org.benchtrail.platform.Moments;
import org.benchtrail.platform.chart.Chart;
import org.benchtrail.platform.chart.SvgChart;
import org.jspecify.annotations.Nullable;

/**
 * What was measured at a device over time, one quantity in one unit.
 *
 * @param chart null where a single reading draws no line
 */
public record DeviceReadings(
        String quantity, String unit, @Nullable RawString chart, List<Row> rows) {

    /** A reading as a row of the table. */
    public record Row(String at, String point, String value, String verdict, String ticket, int entry) {}

    static List<DeviceReadings> of(List<DeviceTickets.Measured> readings, Nameplate nameplate, ZoneId zone) {
        Map<String, List<DeviceTickets.Measured>> groups = new LinkedHashMap<>();
        readings.forEach(r -> groups.computeIfAbsent(
                        r.quantity().toLowerCase(Locale.ROOT) + "\n" + r.unit(), k -> new ArrayList<>())
                .add(r));
        return groups.values().stream().map(g -> group(g, nameplate, zone)).toList();
    }

    private static DeviceReadings group(List<DeviceTickets.Measured> group, Nameplate nameplate, ZoneId zone) {
        DeviceTickets.Measured first = group.get(0);
        return new DeviceReadings(
                first.quantity(),
                first.unit(),
                group.size() > 1 ? SvgChart.draw(chart(group, nameplate, zone)) : null,
                group.stream()
                        .map(r -> new Row(
                                Moments.text(r.at(), zone),
                                r.point(),
                                r.shown() + " " + r.unit(),
                                r.verdict(),
                                r.ticket(),
                                r.entry()))
                        .toList());
    }

    private static Chart chart(List<DeviceTickets.Measured> group, Nameplate nameplate, ZoneId zone) {
        DeviceTickets.Measured first = group.get(0);
        DeviceTickets.Measured last = group.get(group.size() - 1);
        double end = Math.max(days(first.at(), last.at()), 1.0 / 24);
        List<Chart.Series> series = new ArrayList<>();
        series.add(new Chart.Series(
                first.quantity(),
                Chart.Kind.DOTS,
                group.stream()
                        .map(r -> Chart.Point.at(days(first.at(), r.at()), r.value()))
                        .toList()));
        limits(last, nameplate)
                .forEach(limit -> series.add(new Chart.Series(
                        "limit", Chart.Kind.LIMIT, List.of(Chart.Point.at(0, limit), Chart.Point.at(end, limit)))));
        String since = Moments.text(first.at(), zone);
        return new Chart("days since " + since, first.quantity() + " in " + first.unit(), series);
    }

    private static double days(Instant from, Instant to) {
        return Duration.between(from, to).toSeconds() / 86_400.0;
    }

    /** Of the nameplate if it names that quantity, else those that the last reading was held against. */
    private static DoubleStream limits(DeviceTickets.Measured last, Nameplate nameplate) {
        return nameplate
                .of(last.quantity())
                .flatMap(limit -> in(limit, last.unit()))
                .map(limit -> DoubleStream.concat(
                        limit.lower().stream().mapToDouble(Number::doubleValue),
                        limit.upper().stream().mapToDouble(Number::doubleValue)))
                .orElseGet(() -> DoubleStream.concat(stream(last.lower()), stream(last.upper())));
    }

    private static Optional<Limit> in(Limit limit, String unit) {
        try {
            Unit own = Units.read("unit", unit);
            return own.dimension() == limit.unit().dimension() ? Optional.of(limit.in(own)) : Optional.empty();
        } catch (Invalid unknownUnit) {
            return Optional.empty();
        }
    }

    private static DoubleStream stream(@Nullable Double bound) {
        return bound == null ? DoubleStream.empty() : DoubleStream.of(bound);
    }
}
