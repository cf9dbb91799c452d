package org.benchtrail.core.diagnosis.path;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.diagnosis.path.GenericRules.Where;

/** Makes the tests that a layout allows, but for those that a listed finding already is. */
final class GenericTests {
    private final Layout layout;
    private final CategoryPaths paths;
    private final List<GenericTest> all = new ArrayList<>();

    private GenericTests(Layout layout) {
        this.layout = layout;
        this.paths = layout.paths();
    }

    /** @param touched segments that a recorded change touched; there is something to undo only if there are some */
    static List<GenericTest> of(Layout layout, List<String> touched) {
        GenericTests tests = new GenericTests(layout);
        layout.segments().forEach(s -> s.acts().forEach(a -> tests.act(s, a)));
        for (FaultPath path : tests.paths.paths()) {
            path.points().forEach(p -> tests.point(path, p));
        }
        Map<PathAct, Integer> count = new HashMap<>();
        for (WholeTest w : tests.paths.whole()) {
            tests.whole(w, count.merge(w.act(), 1, Integer::sum), touched);
        }
        return List.copyOf(tests.all);
    }

    private void add(GenericTest test) {
        all.add(test.said(paths.note(test.id())));
    }

    private void act(Segment s, SegmentAct a) {
        boolean listed = paths.stands().stream()
                .anyMatch(f -> f.act() == a.act() && f.segments().equals(List.of(s.id())));
        if (listed) {
            return;
        }
        add(new GenericTest(
                GenericTest.id(a.act(), s.id()),
                a.act(),
                a.act().label(s.name()),
                a.act().instruction(s.name()),
                a.act().question(),
                GenericTest.NO_YES,
                a.minutes(),
                a.risk(),
                a.with(),
                a.needs(),
                a.cautions(),
                a.never(),
                s.inside(),
                layout.around(List.of(s.id())),
                List.of()));
    }

    private void point(FaultPath path, Point p) {
        if (p.same().isPresent() || !layout.has(p.after())) {
            return;
        }
        add(new GenericTest(
                GenericTest.id(path, p),
                PathAct.POINT,
                PathAct.POINT.label(p.at()),
                p.instruction(),
                "Is it bad there: " + p.bad() + "?",
                GenericTest.GOOD_BAD,
                p.minutes(),
                p.risk(),
                "",
                List.of(),
                p.cautions(),
                Set.of(),
                false,
                layout.parted(path, p),
                List.of()));
    }

    private void whole(WholeTest w, int number, List<String> touched) {
        List<String> in = w.act() == PathAct.UNDO ? touched : layout.left(w.segments());
        if (in.isEmpty() || !w.same().isEmpty() || isListed(w)) {
            return;
        }
        boolean numbered = w.act() != PathAct.LOG && w.act() != PathAct.UNDO;
        Map<String, Where> where = new HashMap<>();
        in.forEach(s -> where.put(s, Where.IN));
        List<String> values = GenericTest.NO_YES;
        if (w.act() == PathAct.LOG) {
            values = new ArrayList<>(List.of(GenericTest.NAMES_NOTHING));
            values.addAll(in);
        }
        add(new GenericTest(
                numbered ? w.act().word() + ":" + number : w.act().word(),
                w.act(),
                w.act().label(""),
                w.instruction(),
                w.act().question(),
                values,
                w.minutes(),
                w.risk(),
                "",
                w.needs(),
                w.cautions(),
                Set.of(),
                false,
                where,
                List.of()));
    }

    /** A second reading at another load or time is one test however its segments are named; a sister is another device each. */
    private boolean isListed(WholeTest w) {
        return paths.stands().stream()
                .anyMatch(f -> f.act() == w.act()
                        && (w.act() != PathAct.SISTER
                                || Set.copyOf(f.segments()).equals(Set.copyOf(w.segments()))));
    }
}
