package org.benchtrail.learning;

import io.quarkus.qute.RawString;
import java.util.Locale;
import org.benchtrail.core.diagnosis.Calibration;

/**
 * Stated against observed: a dot for each bin of the leader's probability, with the interval of its hit rate, and the line on
 * which a perfect forecaster's dots would lie. Every text in it is a number made here.
 */
final class ReliabilityChart {
    private static final int LEFT = 46;
    private static final int TOP = 30;
    private static final int SIZE = 300;
    private static final int WIDTH = LEFT + SIZE + 16;
    private static final int HEIGHT = TOP + SIZE + 44;

    private final StringBuilder svg = new StringBuilder();

    private ReliabilityChart() {}

    static RawString draw(Calibration.Figures figures) {
        ReliabilityChart chart = new ReliabilityChart();
        chart.frame();
        figures.bins().stream().filter(b -> b.cases() > 0).forEach(chart::bin);
        return new RawString(chart.svg.append("</svg>").toString());
    }

    private void frame() {
        svg.append("<svg class=\"chart\" role=\"img\" viewBox=\"0 0 " + WIDTH + " " + HEIGHT
                + "\" aria-label=\"Stated probability of the leading cause across, share that proved right up, with 95 %"
                + " intervals. The numbers are in the table below.\">");
        for (int k = 0; k <= 10; k += 2) {
            double at = k / 10.0;
            path("grid", "M" + x(at) + " " + TOP + "V" + (TOP + SIZE + 4));
            path("grid", "M" + LEFT + " " + y(at) + "H" + (LEFT + SIZE));
            text(x(at), TOP + SIZE + 17, "middle", 10 * k + "");
            text(LEFT - 5 + "", Double.parseDouble(y(at)) + 4, "end", 10 * k + "");
        }
        path("axis", "M" + LEFT + " " + TOP + "V" + (TOP + SIZE) + "H" + (LEFT + SIZE));
        path("ideal", "M" + x(0) + " " + y(0) + "L" + x(1) + " " + y(1));
        text("2", 14, "start", "proved right, %");
        text(LEFT + SIZE + "", TOP + SIZE + 36, "end", "stated, %");
    }

    private void bin(Calibration.Bin b) {
        String at = x(b.meanStated());
        path("band", "M" + at + " " + y(b.hitRate().low()) + "V" + y(b.hitRate().high()));
        svg.append("<circle class=\"dot\" cx=\"" + at + "\" cy=\"" + y((double) b.hits() / b.cases()) + "\" r=\"4\"/>");
    }

    private void path(String kind, String d) {
        svg.append("<path class=\"" + kind + "\" d=\"" + d + "\"/>");
    }

    private void text(String at, double down, String anchor, String words) {
        svg.append("<text x=\"" + at + "\" y=\"" + number(down) + "\" text-anchor=\"" + anchor + "\">" + words
                + "</text>");
    }

    private static String x(double share) {
        return number(LEFT + share * SIZE);
    }

    private static String y(double share) {
        return number(TOP + (1 - share) * SIZE);
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }
}
