package org.benchtrail.bench;

import io.quarkus.qute.RawString;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import org.benchtrail.core.bench.Result.Curve;
import org.benchtrail.core.bench.Result.Point;

/**
 * Curves over the same axes drawn as one SVG picture: axes with ticks and units, a line for each curve, dashed where it is a
 * level limit, and a key below. Looks come from the stylesheet; lines are told apart by their dashes, not by tint alone.
 *
 * <p>The picture goes into the page unescaped. Every text in it passes {@link #escape}; everything else is a number made here.
 */
final class SvgCurve {
    private static final int WIDTH = 400;
    private static final int PLOT_HEIGHT = 190;
    private static final int TOP = 30;
    private static final int RIGHT = 14;
    private static final int BELOW = 42;
    private static final int KEY_LINE = 18;
    private static final double LETTER = 7;
    private static final int STYLES = 4;

    private final List<Curve> curves;
    private final Axis x;
    private final Axis y;
    private final double left;
    private final StringBuilder svg = new StringBuilder();

    private SvgCurve(List<Curve> curves) {
        this.curves = curves;
        this.x = axis(points().mapToDoubleX(), 5);
        this.y = axis(points().mapToDoubleY(), 4);
        this.left = 14
                + LETTER
                        * y.ticks().stream()
                                .mapToInt(t -> Axis.text(t).length())
                                .max()
                                .orElse(1);
    }

    /** Draws curves that share their axes. */
    static RawString draw(List<Curve> curves) {
        return new RawString(new SvgCurve(curves).picture());
    }

    /** Puts curves with the same quantities and units on one chart, in their order. */
    static List<List<Curve>> charts(List<Curve> curves) {
        List<List<Curve>> charts = new ArrayList<>();
        for (Curve curve : curves) {
            charts.stream()
                    .filter(chart -> alike(chart.get(0), curve))
                    .findFirst()
                    .orElseGet(() -> {
                        List<Curve> fresh = new ArrayList<>();
                        charts.add(fresh);
                        return fresh;
                    })
                    .add(curve);
        }
        return charts;
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

    private record Points(List<Point> all) {
        DoubleStream mapToDoubleX() {
            return all.stream().mapToDouble(Point::x);
        }

        DoubleStream mapToDoubleY() {
            return all.stream().mapToDouble(Point::y);
        }
    }

    private Points points() {
        return new Points(curves.stream().flatMap(c -> c.points().stream()).toList());
    }

    private static Axis axis(DoubleStream values, int steps) {
        double[] all = values.toArray();
        double least = DoubleStream.of(all).min().orElse(0);
        double most = DoubleStream.of(all).max().orElse(1);
        // a curve that starts near zero is read better from zero on
        return Axis.over(least > 0 && least < most / 3 ? 0 : least, most, steps);
    }

    private String picture() {
        int height = TOP + PLOT_HEIGHT + BELOW + KEY_LINE * curves.size() + 6;
        svg.append("<svg class=\"chart\" role=\"img\" viewBox=\"0 0 " + WIDTH + " " + height + "\" aria-label=\"");
        svg.append(escape(spoken())).append("\">");
        grid();
        for (int i = 0; i < curves.size(); i++) {
            line(curves.get(i), style(i));
            key(i);
        }
        return svg.append("</svg>").toString();
    }

    private String spoken() {
        return curves.stream().map(Curve::title).collect(Collectors.joining("; ")) + ". Across: "
                + axisLabel(curves.get(0).xLabel(), curves.get(0).xUnit()) + ". Up: "
                + axisLabel(curves.get(0).yLabel(), curves.get(0).yUnit()) + ". The numbers are in the table below.";
    }

    private void grid() {
        for (double tick : y.ticks()) {
            double at = down(tick);
            svg.append("<path class=\"grid\" d=\"M" + number(left) + " " + number(at) + "H" + (WIDTH - RIGHT) + "\"/>");
            text(left - 5, at + 4, "end", Axis.text(tick));
        }
        List<Double> ticks = x.ticks();
        boolean crowded = ticks.stream().mapToInt(t -> Axis.text(t).length()).sum() * LETTER > WIDTH - left - 40;
        for (int i = 0; i < ticks.size(); i++) {
            double at = across(ticks.get(i));
            svg.append("<path class=\"grid\" d=\"M" + number(at) + " " + TOP + "V" + (TOP + PLOT_HEIGHT + 4) + "\"/>");
            if (!crowded || i % 2 == 0) {
                boolean last = i == ticks.size() - 1;
                text(last ? WIDTH - 2 : at, TOP + PLOT_HEIGHT + 17, last ? "end" : "middle", Axis.text(ticks.get(i)));
            }
        }
        svg.append("<path class=\"axis\" d=\"M" + number(left) + " " + TOP + "V" + (TOP + PLOT_HEIGHT) + "H"
                + (WIDTH - RIGHT) + "\"/>");
        Curve first = curves.get(0);
        text(2, 14, "start", axisLabel(first.yLabel(), first.yUnit()));
        text(WIDTH - 2, TOP + PLOT_HEIGHT + 34, "end", axisLabel(first.xLabel(), first.xUnit()));
    }

    private void line(Curve curve, String style) {
        String path = curve.points().stream()
                .map(p -> number(across(p.x())) + " " + number(down(p.y())))
                .collect(Collectors.joining("L", "M", ""));
        svg.append("<path class=\"line " + style + "\" d=\"" + path + "\"/>");
    }

    private void key(int i) {
        double at = TOP + PLOT_HEIGHT + BELOW + KEY_LINE * (i + 0.5);
        svg.append("<path class=\"line " + style(i) + "\" d=\"M" + number(left) + " " + number(at) + "h28\"/>");
        text(left + 36, at + 4, "start", curves.get(i).title());
    }

    private String style(int i) {
        return level(curves.get(i)) && i > 0 ? "limit" : "line" + i % STYLES;
    }

    private static boolean level(Curve curve) {
        return curve.points().size() == 2
                && curve.points().get(0).y() == curve.points().get(1).y();
    }

    private void text(double at, double down, String anchor, String words) {
        svg.append("<text x=\"" + number(at) + "\" y=\"" + number(down) + "\" text-anchor=\"" + anchor + "\">");
        svg.append(escape(words)).append("</text>");
    }

    private double across(double value) {
        return left + x.share(value) * (WIDTH - RIGHT - left);
    }

    private double down(double value) {
        return TOP + (1 - y.share(value)) * PLOT_HEIGHT;
    }

    private static String number(double value) {
        return BigDecimal.valueOf(value)
                .setScale(1, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    }

    static String escape(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;")
                .replace("'", "&#39;");
    }
}
