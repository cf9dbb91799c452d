package org.benchtrail.learning;

import io.quarkus.qute.RawString;
import java.util.List;
import org.benchtrail.core.diagnosis.Calibration;
import org.benchtrail.platform.chart.Chart;
import org.benchtrail.platform.chart.Chart.Kind;
import org.benchtrail.platform.chart.Chart.Point;
import org.benchtrail.platform.chart.Chart.Series;
import org.benchtrail.platform.chart.SvgChart;

/**
 * Stated against observed: a dot for each bin of the leader's probability, with the interval of its hit rate, and the line on
 * which a perfect forecaster's dots would lie.
 */
final class ReliabilityChart {
    private ReliabilityChart() {}

    static RawString draw(Calibration.Figures figures) {
        List<Point> dots = figures.bins().stream()
                .filter(b -> b.cases() > 0)
                .map(b -> new Point(
                        100 * b.meanStated(),
                        100.0 * b.hits() / b.cases(),
                        100 * b.hitRate().low(),
                        100 * b.hitRate().high()))
                .toList();
        return SvgChart.draw(new Chart(
                "probability stated for the leading cause, in %",
                "proved right, in %",
                List.of(
                        new Series("as often right as stated", Kind.IDEAL, List.of(Point.at(0, 0), Point.at(100, 100))),
                        new Series("cases closed, with 95 % interval", Kind.DOTS, dots))));
    }
}
