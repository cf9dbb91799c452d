package org.benchtrail.platform.chart;

import java.util.List;
import java.util.function.DoubleFunction;

/**
 * What is drawn: series over the same two axes.
 *
 * @param across what the horizontal axis is lettered with, its unit included
 * @param up what the vertical axis is lettered with, its unit included
 * @param series at least one
 * @param rows of numbers that stand below the horizontal axis, one at each of its ticks
 */
public record Chart(String across, String up, List<Series> series, List<Row> rows) {
    public Chart {
        series = List.copyOf(series);
        rows = List.copyOf(rows);
    }

    public Chart(String across, String up, List<Series> series) {
        this(across, up, series, List.of());
    }

    /** @param at what stands below that place of the axis */
    public record Row(String title, DoubleFunction<String> at) {}

    /** How a series is drawn; told apart by shape and dashes, not by tint alone. */
    public enum Kind {
        LINE,
        /** As a line that keeps its height until the next point. */
        STAIR,
        /** A line that is not to be crossed, dashed. */
        LIMIT,
        /** A line that would be met if all were well, dashed. */
        IDEAL,
        /** A dot for each point, with its interval. */
        DOTS
    }

    /** @param points of a line: x strictly increasing */
    public record Series(String title, Kind kind, List<Point> points) {
        public Series {
            points = List.copyOf(points);
        }
    }

    /** A point with the interval in which its y lies; low and high are y itself where there is none. */
    public record Point(double x, double y, double low, double high) {
        public static Point at(double x, double y) {
            return new Point(x, y, y, y);
        }
    }
}
