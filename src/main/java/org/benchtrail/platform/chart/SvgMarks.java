package org.benchtrail.platform.chart;

import io.quarkus.qute.RawString;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Marks drawn over a picture of any size: every place is a share of the width or the height, so that nothing is distorted. Each is
 * drawn twice, broad and light below, so that it is seen on any ground. Looks come from the stylesheet; by itself it is black on
 * white, as on paper.
 */
public final class SvgMarks {
    private static final int TOP = 60;
    private static final int RIGHT = 600;

    private SvgMarks() {}

    public enum Shape {
        ARROW,
        CIRCLE,
        WORDS
    }

    /**
     * A mark; places in thousandths of width and height.
     *
     * @param id tells it from every other mark on the page
     */
    public record Mark(String id, Shape shape, int fromX, int fromY, int toX, int toY, String text) {}

    /** The size of the picture on paper, millimetres. */
    public record Size(int width, int height) {}

    /**
     * The drawing, to lie over the picture.
     *
     * @param spoken what is said instead of it
     * @param size null where the stylesheet gives it the size of the picture
     */
    public static RawString draw(List<Mark> marks, String spoken, @Nullable Size size) {
        StringBuilder svg = new StringBuilder("<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"marks\" role=\"img\""
                + " font-family=\"sans-serif\" font-size=\"13\" aria-label=\"" + SvgChart.escape(spoken)
                + "\"" + (size == null ? "" : " style=\"width:" + size.width() + "mm;height:" + size.height() + "mm\"")
                + ">");
        for (String layer : List.of("below", "ink")) {
            boolean ink = layer.equals("ink");
            svg.append("<g class=\"" + layer + "\" fill=\"none\" stroke=\"" + (ink ? "black" : "white")
                    + "\" stroke-width=\"" + (ink ? 2 : 5) + "\">");
            marks.forEach(mark -> draw(svg, mark, layer));
            svg.append("</g>");
        }
        return new RawString(svg.append("</svg>").toString());
    }

    private static void draw(StringBuilder svg, Mark mark, String layer) {
        switch (mark.shape()) {
            case ARROW -> arrow(svg, mark, layer);
            case CIRCLE ->
                svg.append("<ellipse cx=\"" + share(mark.fromX() + mark.toX(), 2) + "\" cy=\""
                        + share(mark.fromY() + mark.toY(), 2) + "\" rx=\""
                        + share(Math.abs(mark.fromX() - mark.toX()), 2)
                        + "\" ry=\"" + share(Math.abs(mark.fromY() - mark.toY()), 2) + "\"/>");
            case WORDS -> {}
        }
        words(svg, mark, layer.equals("ink"));
    }

    private static void arrow(StringBuilder svg, Mark mark, String layer) {
        boolean ink = layer.equals("ink");
        String tip = layer + "-" + mark.id();
        svg.append("<marker id=\"" + tip + "\" class=\"tip\" viewBox=\"0 0 10 10\" refX=\"8\" refY=\"5\""
                + " markerUnits=\"userSpaceOnUse\" markerWidth=\"" + (ink ? 12 : 18) + "\" markerHeight=\""
                + (ink ? 12 : 18) + "\" orient=\"auto\" stroke=\"none\" fill=\"" + (ink ? "black" : "white")
                + "\"><path d=\"M0 0L10 5L0 10z\"/></marker><line x1=\"" + share(mark.fromX(), 1) + "\" y1=\""
                + share(mark.fromY(), 1) + "\" x2=\"" + share(mark.toX(), 1) + "\" y2=\"" + share(mark.toY(), 1)
                + "\" marker-end=\"url(#" + tip + ")\"/>");
    }

    /** Beside where the mark begins: below it at the upper edge, to its left at the right one. */
    private static void words(StringBuilder svg, Mark mark, boolean ink) {
        if (mark.text().isEmpty()) {
            return;
        }
        boolean leftwards = mark.fromX() > RIGHT;
        svg.append("<text x=\"" + share(mark.fromX(), 1) + "\" y=\"" + share(mark.fromY(), 1) + "\" dy=\""
                + (mark.fromY() < TOP ? "1em" : "-0.4em") + "\" text-anchor=\"" + (leftwards ? "end" : "start") + "\""
                + (ink ? " fill=\"black\" stroke=\"none\"" : "") + ">" + SvgChart.escape(mark.text()) + "</text>");
    }

    /** Of so many thousandths, in per cent. */
    private static String share(int thousandths, int parts) {
        return thousandths / (10.0 * parts) + "%";
    }
}
