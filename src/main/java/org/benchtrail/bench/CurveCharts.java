package org.benchtrail.bench;

import java.util.ArrayList;
import java.util.List;
import org.benchtrail.core.bench.Result.Curve;
import org.benchtrail.platform.chart.Chart;
import org.benchtrail.platform.chart.Chart.Kind;
import org.benchtrail.platform.chart.Chart.Point;
import org.benchtrail.platform.chart.Chart.Series;

/** The curves of a result as charts: those with the same quantities and units share one. */
final class CurveCharts {
    private CurveCharts() {}

    /** Puts curves with the same quantities and units together, in their order. */
    static List<List<Curve>> grouped(List<Curve> curves) {
        List<List<Curve>> groups = new ArrayList<>();
        for (Curve curve : curves) {
            groups.stream()
                    .filter(group -> alike(group.get(0), curve))
                    .findFirst()
                    .orElseGet(() -> {
                        List<Curve> fresh = new ArrayList<>();
                        groups.add(fresh);
                        return fresh;
                    })
                    .add(curve);
        }
        return groups;
    }

    private static boolean alike(Curve one, Curve other) {
        return one.xLabel().equals(other.xLabel())
                && one.xUnit().equals(other.xUnit())
                && one.yLabel().equals(other.yLabel())
                && one.yUnit().equals(other.yUnit());
    }

    /** Quantity and unit as an axis is lettered; a pure number has no unit. */
    static String axisLabel(String label, String unit) {
        return unit.equals("1") || unit.isEmpty() ? label : label + " in " + unit;
    }

    /** @param group curves over the same axes; a level line after the first is a limit */
    static Chart chart(List<Curve> group) {
        List<Series> series = new ArrayList<>();
        for (Curve curve : group) {
            boolean limit = !series.isEmpty() && level(curve);
            List<Point> points =
                    curve.points().stream().map(p -> Point.at(p.x(), p.y())).toList();
            series.add(new Series(curve.title(), limit ? Kind.LIMIT : Kind.LINE, points));
        }
        Curve first = group.get(0);
        return new Chart(axisLabel(first.xLabel(), first.xUnit()), axisLabel(first.yLabel(), first.yUnit()), series);
    }

    private static boolean level(Curve curve) {
        return curve.points().size() == 2
                && curve.points().get(0).y() == curve.points().get(1).y();
    }
}
