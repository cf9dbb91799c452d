package org.benchtrail.core.bench.storage;

import static org.benchtrail.core.bench.Numeral.of;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.benchtrail.core.bench.Numeral;
import org.benchtrail.core.bench.Result.Curve;
import org.benchtrail.core.bench.Result.Point;
import org.benchtrail.core.bench.ResultDraft;
import org.benchtrail.core.bench.storage.DriveHealth.Sample;

/**
 * An attribute over time: the least-squares line through its readings, and where that meets the limit.
 *
 * @param now the value at day 0
 * @param limit the threshold or end; none if not above 0
 * @param sign of the way towards the limit: -1 for an ATA value that falls, 1 for a share used that rises
 */
record DriveTrend(String name, double now, double limit, int sign) {
    /** Adds slope, date and curves to the draft; nothing if there is no earlier reading. */
    void write(ResultDraft draft, List<Sample> earlier) {
        if (earlier.isEmpty()) {
            return;
        }
        List<Point> points = points(earlier);
        double slope = slope(draft, points);
        curves(draft, points);
        if (approaches(slope)) {
            draft.figure(
                    "Days until the limit at this trend",
                    "t = (limit - value now) / slope",
                    "(" + of(limit) + " - " + of(now) + ") / " + Numeral.term(slope),
                    (limit - now) / slope,
                    "d",
                    2);
            draft.assume("The trend of " + name
                    + " goes on in a straight line; a drive may fail well before it meets the limit.");
        }
    }

    private List<Point> points(List<Sample> earlier) {
        List<Point> points = new ArrayList<>();
        earlier.stream()
                .sorted(Comparator.comparingDouble(Sample::daysAgo).reversed())
                .forEach(sample -> points.add(new Point(-sample.daysAgo(), sample.value())));
        points.add(new Point(0, now));
        return points;
    }

    private boolean approaches(double slope) {
        return limit > 0 && slope * sign > 0 && (limit - now) * sign > 0;
    }

    private void curves(ResultDraft draft, List<Point> points) {
        draft.curve(new Curve("Trend of " + name, "day", "d", name, "1", points));
        if (limit > 0) {
            List<Point> line = List.of(new Point(points.get(0).x(), limit), new Point(0, limit));
            draft.curve(new Curve("Limit", "day", "d", name, "1", line));
        }
    }

    private static double slope(ResultDraft draft, List<Point> points) {
        double n = points.size();
        double meanX = points.stream().mapToDouble(Point::x).sum() / n;
        double meanY = points.stream().mapToDouble(Point::y).sum() / n;
        double sxy = 0;
        double sxx = 0;
        for (Point p : points) {
            sxy += (p.x() - meanX) * (p.y() - meanY);
            sxx += (p.x() - meanX) * (p.x() - meanX);
        }
        draft.say(
                "Sums about the means",
                "Sxy = sum (x - mean x)(y - mean y), Sxx = sum (x - mean x)^2",
                "mean x = " + of(meanX) + ", mean y = " + of(meanY) + ", Sxy = " + of(sxy) + ", Sxx = " + of(sxx));
        return draft.figure("Slope", "b = Sxy / Sxx", Numeral.term(sxy) + " / " + of(sxx), sxy / sxx, "1/d", 3);
    }
}
