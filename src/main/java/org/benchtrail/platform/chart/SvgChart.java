package org.benchtrail.platform.chart;

import io.quarkus.qute.RawString;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.benchtrail.platform.chart.Chart.Kind;
import org.benchtrail.platform.chart.Chart.Point;
import org.benchtrail.platform.chart.Chart.Series;

/**
 * A chart as one SVG picture: axes with ticks, a line or dots for each series, and a key below. By itself it is drawn in black,
 * as on paper; a page's stylesheet says otherwise. Lines are told apart by their dashes, not by tint alone.
 *
 * <p>The picture goes into the page unescaped. Every text in it passes {@link #escape}; everything else is a number made here.
 */
public final class SvgChart {
    private static final int WIDTH = 400;
    private static final int PLOT_HEIGHT = 190;
    private static final int TOP = 30;
    private static final int RIGHT = 14;
    private static final int BELOW = 42;
    private static final int KEY_LINE = 18;
    private static final int ROW = 34;
    private static final double LETTER = 7;
    private static final int STYLES = 4;

    private static final String BLACK = "stroke=\"black\"";

    /** How a line looks where no stylesheet says it, if it is not a thin black one. */
    private static final Map<String, String> PLAIN = Map.of(
            "grid", "stroke=\"silver\"",
            "line limit", BLACK + " stroke-width=\"1.8\" stroke-dasharray=\"7 4\"",
            "ideal", BLACK + " stroke-dasharray=\"6 4\"",
            "line line1", BLACK + " stroke-dasharray=\"2 3\"",
            "line line2", BLACK + " stroke-dasharray=\"9 3 2 3\"",
            "line line3", BLACK + " stroke-dasharray=\"1 4\" stroke-width=\"3.2\"");

    private final Chart chart;
    private final Axis x;
    private final Axis y;
    private final double left;
    private final StringBuilder svg = new StringBuilder();

    private SvgChart(Chart chart) {
        this.chart = chart;
        this.x = axis(points().flatMapToDouble(p -> DoubleStream.of(p.x())), 5);
        this.y = axis(points().flatMapToDouble(p -> DoubleStream.of(p.y(), p.low(), p.high())), 4);
        this.left = 14
                + LETTER
                        * y.ticks().stream()
                                .mapToInt(t -> Axis.text(t).length())
                                .max()
                                .orElse(1);
    }

    public static RawString draw(Chart chart) {
        return new RawString(new SvgChart(chart).picture());
    }

    private Stream<Point> points() {
        return chart.series().stream().flatMap(s -> s.points().stream());
    }

    private static Axis axis(DoubleStream values, int steps) {
        double[] all = values.toArray();
        double least = DoubleStream.of(all).min().orElse(0);
        double most = DoubleStream.of(all).max().orElse(1);
        // a curve that starts near zero is read better from zero on
        return Axis.over(least > 0 && least < most / 3 ? 0 : least, most, steps);
    }

    private String picture() {
        int height = keyFrom() + KEY_LINE * chart.series().size() + 6;
        svg.append("<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"chart\" role=\"img\" viewBox=\"0 0 " + WIDTH + " "
                + height + "\" width=\"" + WIDTH + "\" height=\"" + height
                + "\" font-family=\"sans-serif\" font-size=\"12\" aria-label=\"");
        svg.append(escape(spoken())).append("\">");
        grid();
        rows();
        for (int i = 0; i < chart.series().size(); i++) {
            series(chart.series().get(i), i);
            key(chart.series().get(i), i);
        }
        return svg.append("</svg>").toString();
    }

    private String spoken() {
        return chart.series().stream().map(Series::title).collect(Collectors.joining("; ")) + ". Across: "
                + chart.across() + ". Up: " + chart.up() + ". The numbers are in the table below.";
    }

    private int keyFrom() {
        return TOP + PLOT_HEIGHT + BELOW + ROW * chart.rows().size();
    }

    /** Each with its title above it, as a number at every tick would run into one beside it. */
    private void rows() {
        for (int i = 0; i < chart.rows().size(); i++) {
            double at = TOP + PLOT_HEIGHT + BELOW + ROW * i + 10.0;
            text(2, at, "start", chart.rows().get(i).title());
            List<Double> ticks = x.ticks();
            for (int t = 0; t < ticks.size(); t++) {
                if (!isCrowded(ticks) || t % 2 == 0) {
                    tick(ticks, t, at + 15, chart.rows().get(i).at().apply(ticks.get(t)));
                }
            }
        }
    }

    private boolean isCrowded(List<Double> ticks) {
        return ticks.stream().mapToInt(t -> Axis.text(t).length()).sum() * LETTER > WIDTH - left - 40;
    }

    private void tick(List<Double> ticks, int place, double down, String words) {
        boolean last = place == ticks.size() - 1;
        text(last ? WIDTH - 2 : across(ticks.get(place)), down, last ? "end" : "middle", words);
    }

    private void grid() {
        for (double tick : y.ticks()) {
            double at = down(tick);
            path("grid", "M" + number(left) + " " + number(at) + "H" + (WIDTH - RIGHT));
            text(left - 5, at + 4, "end", Axis.text(tick));
        }
        List<Double> ticks = x.ticks();
        boolean crowded = isCrowded(ticks);
        for (int i = 0; i < ticks.size(); i++) {
            double at = across(ticks.get(i));
            path("grid", "M" + number(at) + " " + TOP + "V" + (TOP + PLOT_HEIGHT + 4));
            if (!crowded || i % 2 == 0) {
                tick(ticks, i, TOP + PLOT_HEIGHT + 17, Axis.text(ticks.get(i)));
            }
        }
        path("axis", "M" + number(left) + " " + TOP + "V" + (TOP + PLOT_HEIGHT) + "H" + (WIDTH - RIGHT));
        text(2, 14, "start", chart.up());
        text(WIDTH - 2, TOP + PLOT_HEIGHT + 34, "end", chart.across());
    }

    private void series(Series series, int place) {
        if (series.kind() == Kind.DOTS) {
            series.points().forEach(this::dot);
            return;
        }
        boolean stair = series.kind() == Kind.STAIR;
        String path = series.points().stream()
                .map(p -> number(across(p.x())) + (stair ? "V" : " ") + number(down(p.y())))
                .collect(Collectors.joining(stair ? "H" : "L"));
        path(style(series, place), "M" + (stair ? path.replaceFirst("V", " ") : path));
    }

    private void dot(Point p) {
        String at = number(across(p.x()));
        path("band", "M" + at + " " + number(down(p.low())) + "V" + number(down(p.high())));
        circle(at, number(down(p.y())));
    }

    private void key(Series series, int place) {
        double at = keyFrom() + KEY_LINE * (place + 0.5);
        if (series.kind() == Kind.DOTS) {
            circle(number(left + 14), number(at));
        } else {
            path(style(series, place), "M" + number(left) + " " + number(at) + "h28");
        }
        text(left + 36, at + 4, "start", series.title());
    }

    private static String style(Series series, int place) {
        return switch (series.kind()) {
            case LIMIT -> "line limit";
            case IDEAL -> "ideal";
            case LINE, STAIR, DOTS -> "line line" + place % STYLES;
        };
    }

    private void path(String style, String d) {
        svg.append("<path class=\"" + style + "\" d=\"" + d + "\" fill=\"none\" " + PLAIN.getOrDefault(style, BLACK)
                + "/>");
    }

    private void circle(String at, String down) {
        svg.append("<circle class=\"dot\" cx=\"" + at + "\" cy=\"" + down + "\" r=\"4\"/>");
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
