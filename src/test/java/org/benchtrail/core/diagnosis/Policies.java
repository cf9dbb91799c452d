package org.benchtrail.core.diagnosis;

import java.util.Comparator;
import java.util.List;
import java.util.function.BiFunction;
import java.util.stream.IntStream;

/** Ways of working a ticket, to compare. Each looks at the evidence and names the next act. */
final class Policies {
    private Policies() {}

    static BiFunction<Model, Evidence, Action> advised(PlanSettings settings) {
        return (m, e) -> new NextTest(m, settings)
                .advise(Ranking.of(m, e), BenchSituation.PLAIN)
                .recommended()
                .orElseThrow();
    }

    /** The tests in catalogue order; an abnormal answer calls for the repair it speaks for most; never gives up early. */
    static Action checklist(Model m, Evidence e) {
        for (int f = 0; f < m.findings(); f++) {
            String id = m.finding(f).id();
            List<Report> reports =
                    e.reports().stream().filter(r -> r.finding().equals(id)).toList();
            if (reports.isEmpty()) {
                return act(Action.Type.TEST, id);
            }
            boolean normal = reports.get(0).value().equals(m.finding(f).values().get(0));
            String suspect = m.id(suspect(m, f));
            if (!normal && !failed(e, suspect)) {
                return act(Action.Type.REPAIR, suspect);
            }
        }
        return frequentFirst(m, e);
    }

    private static int suspect(Model m, int f) {
        return IntStream.range(0, m.size())
                .boxed()
                .min(Comparator.comparingDouble(i -> m.table(f).row(i, m.size())[0]))
                .orElseThrow();
    }

    /** No tests: the repair of the most frequent cause not yet tried. */
    static Action frequentFirst(Model m, Evidence e) {
        return IntStream.range(0, m.size())
                .boxed()
                .filter(i -> !failed(e, m.id(i)))
                .min(Comparator.comparingDouble(i -> -m.prior(i)))
                .map(i -> act(Action.Type.REPAIR, m.id(i)))
                .orElse(act(Action.Type.ESCALATE, Action.ESCALATE_ID));
    }

    private static boolean failed(Evidence e, String cause) {
        return e.failedRepairs().stream().anyMatch(f -> f.repair().equals(cause));
    }

    private static Action act(Action.Type type, String id) {
        return new Action(type, id, 0, 0);
    }
}
