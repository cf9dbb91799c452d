package org.benchtrail.core.diagnosis.path;

import java.util.List;

/**
 * The way from a source, where power, data, heat or paper come from, to the load, where the user meets it.
 *
 * @param order ids of its segments, from source to load; 4 to 8
 * @param points in the same order
 */
public record FaultPath(String id, String title, List<String> order, List<Point> points) {
    public FaultPath {
        order = List.copyOf(order);
        points = List.copyOf(points);
    }
}
