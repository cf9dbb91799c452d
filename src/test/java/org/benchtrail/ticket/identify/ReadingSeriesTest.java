package org.benchtrail.ticket.identify;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.platform.chart.Chart;
import org.benchtrail.platform.chart.Chart.Kind;
import org.junit.jupiter.api.Test;

class ReadingSeriesTest {
    private static final Instant START = Instant.parse("2026-03-02T08:00:00Z");

    private static StandingFact<ReadingRecorded> reading(int entry, long seconds, String value, String point) {
        ReadingRecorded fact = new ReadingRecorded(
                "temperature", value, "°C", point, "sensor", null, "85", "nameplate", null, null, null);
        Stamp stamp = new Stamp(entry, START.plusSeconds(seconds), "ines", Set.of(Role.TECHNICIAN));
        return new StandingFact<>(fact, stamp, 1, Step.IDENTIFY, false, null);
    }

    private static List<StandingFact<ReadingRecorded>> three(long apart) {
        return new ArrayList<>(List.of(
                reading(3, 0, "71.5", "chip"), reading(5, apart, "83", "chip"), reading(8, 2 * apart, "96", "chip")));
    }

    @Test
    void threeOfOneQuantityAndPoint_areDrawnWithTheirLimit() {
        Chart chart = ReadingSeries.chart(three(1800), three(1800).get(2).fact());
        assertEquals("hours since the first", chart.across());
        assertEquals("in °C", chart.up());
        assertEquals(
                List.of(Kind.DOTS, Kind.LIMIT),
                chart.series().stream().map(Chart.Series::kind).toList());
        assertEquals(
                List.of(Chart.Point.at(0, 71.5), Chart.Point.at(0.5, 83), Chart.Point.at(1, 96)),
                chart.series().get(0).points());
        assertEquals(
                List.of(Chart.Point.at(0, 85), Chart.Point.at(1, 85)),
                chart.series().get(1).points());
        assertEquals("at most 85 °C", chart.series().get(1).title());
    }

    @Test
    void recordedAtOnce_areDrawnInTheirOrder() {
        Chart chart = ReadingSeries.chart(three(0), three(0).get(2).fact());
        assertEquals("reading", chart.across());
        assertEquals(
                List.of(1.0, 2.0, 3.0),
                chart.series().get(0).points().stream().map(Chart.Point::x).toList());
    }

    @Test
    void fewerOrOthers_areNoSeries() {
        List<StandingFact<ReadingRecorded>> readings = three(60).subList(0, 2);
        readings.add(reading(9, 200, "40", "inlet"));
        assertEquals(List.of(), ReadingSeries.all(readings));
        readings.add(reading(10, 300, "90", "chip"));
        List<ReadingSeries> series = ReadingSeries.all(readings);
        assertEquals(1, series.size());
        assertEquals("temperature, chip", series.get(0).title());
        assertEquals(
                List.of(3, 5, 10),
                series.get(0).readings().stream()
                        .map(EvidenceView.Reading::entry)
                        .toList());
        assertTrue(series.get(0).drawing().getValue().contains("<svg"));
    }
}
