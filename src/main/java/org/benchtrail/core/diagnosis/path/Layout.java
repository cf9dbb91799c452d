package org.benchtrail.core.diagnosis.path;

import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.benchtrail.core.diagnosis.path.GenericRules.Where;

/** The segments that are there on a ticket, and who is whose neighbour then: an absent one leaves the paths. */
final class Layout {
    /** What a model of places depends on beside the catalogue. */
    record Key(Set<String> present, List<String> touched) {}

    private final CategoryPaths paths;
    private final Set<String> present;
    private final List<Segment> segments;
    private final Map<String, Set<String>> neighbours = new HashMap<>();

    Layout(CategoryPaths paths, Set<String> present) {
        this.paths = paths;
        this.present = Set.copyOf(present);
        segments =
                paths.segments().stream().filter(s -> present.contains(s.id())).toList();
        for (FaultPath path : paths.paths()) {
            List<String> order = order(path);
            for (int k = 1; k < order.size(); k++) {
                neighbour(order.get(k - 1), order.get(k));
                neighbour(order.get(k), order.get(k - 1));
            }
        }
    }

    private void neighbour(String a, String b) {
        neighbours.computeIfAbsent(a, s -> new TreeSet<>()).add(b);
    }

    CategoryPaths paths() {
        return paths;
    }

    /** In the order of the file. */
    List<Segment> segments() {
        return segments;
    }

    boolean has(String segment) {
        return present.contains(segment);
    }

    Set<String> present() {
        return present;
    }

    /** Those of them that are there, in their order. */
    List<String> left(List<String> all) {
        return all.stream().filter(present::contains).toList();
    }

    /** A path's segments that are there, from source to load. */
    List<String> order(FaultPath path) {
        return left(path.order());
    }

    /** A test that is done to some segments. */
    Map<String, Where> around(List<String> in) {
        Map<String, Where> where = new HashMap<>();
        for (String s : in) {
            neighbours.getOrDefault(s, Set.of()).forEach(n -> where.put(n, Where.NEXT));
        }
        in.forEach(s -> where.put(s, Where.IN));
        return where;
    }

    /** A test at a point of a path. */
    Map<String, Where> parted(FaultPath path, Point point) {
        List<String> order = order(path);
        int last = order.indexOf(point.after());
        Map<String, Where> where = new HashMap<>();
        for (int k = 0; k < order.size(); k++) {
            boolean upstream = k <= last;
            boolean in = upstream == (point.faultThen() == Point.Side.UPSTREAM);
            where.put(order.get(k), in ? Where.IN : Where.BEYOND);
        }
        if (point.badElsewhere()) {
            segments.forEach(s -> where.putIfAbsent(s.id(), Where.IN));
        }
        return where;
    }

    /** The segments that the kinds of change touch, in the order of the file. */
    List<String> touched(Set<String> kinds) {
        Set<String> touched = new LinkedHashSet<>();
        paths.changes().stream().filter(c -> kinds.contains(c.kind())).forEach(c -> touched.addAll(c.touches()));
        return segments.stream().map(Segment::id).filter(touched::contains).toList();
    }
}
