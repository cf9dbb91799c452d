package org.benchtrail.core.diagnosis.path;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.diagnosis.Report;

/**
 * One path as it is drawn: its segments that are there, from source to load, and what was measured between them.
 *
 * @param path its id
 */
public record Strip(String path, String title, List<Box> boxes) {
    public Strip {
        boxes = List.copyOf(boxes);
    }

    /** What is known at the end of a segment. */
    public enum Mark {
        NO_POINT,
        NOT_MEASURED,
        GOOD,
        BAD
    }

    /**
     * A segment.
     *
     * @param mass belief that the fault is in it
     * @param meant whether it lies in the stretch that most of the belief is in
     * @param after what was measured behind it
     * @param at where that is, in words; empty if nothing can be measured there
     */
    public record Box(String segment, String name, double mass, boolean meant, Mark after, String at) {}

    /** Those of at least two segments that are there. */
    static List<Strip> of(Layout layout, Map<String, Double> masses, Optional<Stretch> stretch, List<Report> reports) {
        Map<String, String> answers = new HashMap<>();
        reports.stream().filter(Report::isAnswer).forEach(r -> answers.put(r.finding(), r.value()));
        List<Strip> strips = new ArrayList<>();
        for (FaultPath path : layout.paths().paths()) {
            List<String> order = layout.order(path);
            if (order.size() > 1) {
                List<Box> boxes = order.stream()
                        .map(id -> box(layout.paths().segment(id).orElseThrow(), path, masses, stretch, answers))
                        .toList();
                strips.add(new Strip(path.id(), path.title(), boxes));
            }
        }
        return strips;
    }

    private static Box box(
            Segment s,
            FaultPath path,
            Map<String, Double> masses,
            Optional<Stretch> stretch,
            Map<String, String> answers) {
        Optional<Point> point =
                path.points().stream().filter(p -> p.after().equals(s.id())).findFirst();
        boolean meant = stretch.filter(
                        t -> t.path().equals(path.id()) && t.segments().contains(s.id()))
                .isPresent();
        return new Box(
                s.id(),
                s.name(),
                masses.getOrDefault(s.id(), 0.0),
                meant,
                point.map(p -> mark(path, p, answers)).orElse(Mark.NO_POINT),
                point.map(Point::at).orElse(""));
    }

    private static Mark mark(FaultPath path, Point point, Map<String, String> answers) {
        String value = point.same()
                .map(s -> answers.get(s.finding()))
                .orElseGet(() -> answers.get(GenericTest.id(path, point)));
        if (value == null) {
            return Mark.NOT_MEASURED;
        }
        return isBad(point, value) ? Mark.BAD : Mark.GOOD;
    }

    /** Of a listed finding whatever is not its first value is bad, if the file says so. */
    private static boolean isBad(Point point, String value) {
        return point.same()
                .map(s -> s.bad().equals(Point.ABNORMAL)
                        ? !value.equals("no") && !value.equals("inside")
                        : s.bad().equals(value))
                .orElse(value.equals("bad"));
    }
}
