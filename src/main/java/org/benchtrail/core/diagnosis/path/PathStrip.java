package org.benchtrail.core.diagnosis.path;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Report;

/**
 * A path as it is drawn: a line of boxes with what is known at the boundaries between them.
 *
 * @param boxes its segments that are there, from source to load
 */
public record PathStrip(String path, String title, List<Box> boxes) {
    /** What a point showed. */
    public enum Mark {
        GOOD,
        BAD,
        /** Nobody looked, or nobody could tell. */
        OPEN,
        /** There is no point. */
        NONE
    }

    /**
     * A segment with the point behind it.
     *
     * @param mass belief that the fault is here
     * @param at where the point is, in words; empty if there is none
     */
    public record Box(String segment, String name, double mass, String at, Mark mark) {}

    public PathStrip {
        boxes = List.copyOf(boxes);
    }

    /** All paths of a localisation. */
    public static List<PathStrip> of(Localisation at) {
        List<PathStrip> strips = new ArrayList<>();
        for (FaultPath path : at.layout().paths().paths()) {
            List<Box> boxes = at.layout().order(path).stream()
                    .map(id -> box(at, path, at.layout().paths().segment(id).orElseThrow()))
                    .toList();
            strips.add(new PathStrip(path.id(), path.title(), boxes));
        }
        return strips;
    }

    private static Box box(Localisation at, FaultPath path, Segment s) {
        Optional<Point> point =
                path.points().stream().filter(p -> p.after().equals(s.id())).findFirst();
        return new Box(
                s.id(),
                s.name(),
                at.masses().getOrDefault(s.id(), 0.0),
                point.map(Point::at).orElse(""),
                point.map(p -> mark(at, path, p)).orElse(Mark.NONE));
    }

    private static Mark mark(Localisation at, FaultPath path, Point p) {
        String test = p.same().map(Point.Same::finding).orElse(GenericTest.id(path, p));
        Map<String, Report> latest = Equipment.latest(at.ranking().evidence());
        Report answer = latest.get(test);
        if (answer == null) {
            return Mark.OPEN;
        }
        String value = answer.value();
        String bad = p.same().map(Point.Same::bad).orElse("bad");
        boolean isBad = bad.equals(Point.ABNORMAL) ? !value.equals(first(at, test)) : value.equals(bad);
        return isBad ? Mark.BAD : Mark.GOOD;
    }

    private static String first(Localisation at, String finding) {
        return at.model().category().findings().stream()
                .filter(f -> f.id().equals(finding))
                .map(Finding::usual)
                .findFirst()
                .orElse(Report.UNKNOWN);
    }
}
