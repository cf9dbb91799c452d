package org.benchtrail.core.diagnosis.path;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.diagnosis.Report;

/** Answers that only make sense if something is there that is said not to be: its question comes back. */
final class Contradicted {
    private Contradicted() {}

    /** @param aside reports that weigh nothing with the segments that are there */
    static List<Segment> segments(CategoryPaths paths, Set<String> present, List<Report> aside) {
        Set<String> named = new LinkedHashSet<>();
        for (Report r : aside) {
            if (r.isAnswer()) {
                named(paths, r.finding(), named);
            }
        }
        return paths.segments().stream()
                .filter(s -> named.contains(s.id()) && !present.contains(s.id()))
                .toList();
    }

    private static void named(CategoryPaths paths, String finding, Set<String> named) {
        for (Segment s : paths.segments()) {
            if (s.acts().stream().anyMatch(a -> GenericTest.id(a.act(), s.id()).equals(finding))) {
                named.add(s.id());
            }
        }
        for (FaultPath path : paths.paths()) {
            for (Point p : path.points()) {
                boolean same = p.same().map(s -> s.finding().equals(finding)).orElse(false);
                if (same || GenericTest.id(path, p).equals(finding)) {
                    named.add(p.after());
                }
            }
        }
        paths.stands().stream().filter(s -> s.finding().equals(finding)).forEach(s -> named.addAll(s.segments()));
    }
}
