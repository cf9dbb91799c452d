package org.benchtrail.platform.chart;

import io.quarkus.qute.RawString;
import java.util.List;

/**
 * A way drawn as a line of numbered boxes, each filled from below by its share; between two boxes a tick where it was good, a
 * cross where it was bad. Looks come from the style sheet. The picture says nothing that its caller does not say in words.
 */
public final class SvgStrip {
    private static final int BOX = 34;
    private static final int GAP = 18;
    private static final int TOP = 4;
    private static final int HEIGHT = BOX + 2 * TOP;
    private static final int MARK = 5;
    private static final int BASELINE = 5;

    private SvgStrip() {}

    /** What is known between a box and the next. */
    public enum Between {
        NOTHING,
        GOOD,
        BAD
    }

    /**
     * A box.
     *
     * @param share 0 to 1
     * @param heavy whether its edge is drawn heavily
     */
    public record Box(double share, boolean heavy, Between after) {}

    /** @param spoken what is said instead of the picture */
    public static RawString draw(List<Box> boxes, String spoken) {
        int width = boxes.size() * (BOX + GAP);
        StringBuilder svg = new StringBuilder(
                "<svg class=\"strip\" role=\"img\" viewBox=\"0 0 " + width + " " + HEIGHT + "\" width=\"" + width
                        + "\" height=\"" + HEIGHT + "\" aria-label=\"" + SvgChart.escape(spoken) + "\">");
        for (int k = 0; k < boxes.size(); k++) {
            box(svg, boxes.get(k), k, k == boxes.size() - 1);
        }
        return new RawString(svg.append("</svg>").toString());
    }

    private static void box(StringBuilder svg, Box box, int place, boolean last) {
        int x = place * (BOX + GAP) + 2;
        long filled = Math.round(BOX * Math.max(0, Math.min(1, box.share())));
        int middle = TOP + BOX / 2;
        rect(svg, "empty", x, TOP, BOX);
        rect(svg, "filled", x, TOP + BOX - filled, filled);
        rect(svg, box.heavy() ? "edge heavy" : "edge", x, TOP, BOX);
        svg.append("<text x=\"" + (x + BOX / 2) + "\" y=\"" + (middle + BASELINE) + "\" text-anchor=\"middle\">"
                + (place + 1) + "</text>");
        if (!last) {
            path(svg, "way", "M" + (x + BOX) + " " + middle + "h" + GAP);
        }
        mark(svg, box.after(), x + BOX + GAP / 2, middle);
    }

    private static void mark(StringBuilder svg, Between after, int x, int y) {
        switch (after) {
            case NOTHING -> {}
            case GOOD ->
                path(
                        svg,
                        "good",
                        "M" + (x - MARK) + " " + y + "l" + (MARK - 1) + " " + MARK + "l" + (MARK + 1) + " -"
                                + 2 * MARK);
            case BAD ->
                path(
                        svg,
                        "bad",
                        "M" + (x - MARK) + " " + (y - MARK) + "l" + 2 * MARK + " " + 2 * MARK + "m0 -" + 2 * MARK + "l-"
                                + 2 * MARK + " " + 2 * MARK);
        }
    }

    private static void rect(StringBuilder svg, String style, int x, long y, long height) {
        svg.append("<rect class=\"" + style + "\" x=\"" + x + "\" y=\"" + y + "\" width=\"" + BOX + "\" height=\""
                + height + "\"/>");
    }

    private static void path(StringBuilder svg, String style, String d) {
        svg.append("<path class=\"" + style + "\" d=\"" + d + "\"/>");
    }
}
