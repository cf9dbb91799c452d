package org.benchtrail.core.diagnosis;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * The next best act: the test, repair or escalation with the least expected remaining minutes.
 *
 * <p>One step of lookahead: after the act, the plan of {@link RepairOrder} is followed. A test is recommended only if it
 * saves at least the threshold; otherwise the better of repairing and escalating. Stop-work hazards come before any ranking,
 * and a repair that a gate holds back is never recommended.
 *
 * <p>Units: minutes. Guarantee: ties are broken by kind, then id; the same input gives the same advice.
 * <p>Source: D. Heckerman, J. Breese, K. Rommelse, "Decision-theoretic troubleshooting", Communications of the ACM 38(3),
 * 1995. Differs: escalation ends every plan, and an unlisted cause is kept.
 */
public final class NextTest {
    /** Two steps are looked ahead only in problems up to this many causes times findings. */
    private static final int SMALL = 5000;

    private final Model model;
    private final PlanSettings settings;
    private final RepairOrder repairs;

    public NextTest(Model model, PlanSettings settings) {
        this.model = model;
        this.settings = settings;
        this.repairs = RepairOrder.of(model, settings);
    }

    /** The repairs of this category with their minutes at this site. */
    public RepairOrder repairs() {
        return repairs;
    }

    /** @param ranking of this model */
    public Advice advise(Ranking ranking, BenchSituation situation) {
        double[] p = ranking.probabilities();
        boolean[] done = done(ranking.evidence());
        Lookahead now = new Lookahead(model, settings, repairs, p, done);
        double plan = now.planMinutes();
        double threshold = Math.max(settings.thresholdMinutes(), settings.thresholdShare() * plan);
        List<Advice.Blocked> blocked = new ArrayList<>();
        if (!situation.hazards().isEmpty()) {
            return new Advice(situation.hazards(), List.of(), Optional.empty(), blocked, plan, threshold);
        }
        List<Action> actions = new ArrayList<>(tests(now, plan, ranking.evidence(), situation));
        actions.addAll(repairs(p, now.order(), situation, blocked));
        actions.addAll(shared(p, done, ranking.evidence(), situation, blocked));
        double escalate = repairs.escalateMinutes;
        actions.add(new Action(Action.Type.ESCALATE, Action.ESCALATE_ID, escalate, escalate));
        actions.sort(Action::compare);
        return new Advice(situation.hazards(), actions, choose(actions, threshold), blocked, plan, threshold);
    }

    private static Optional<Action> choose(List<Action> actions, double threshold) {
        Action other = first(actions, false).orElseThrow();
        return first(actions, true)
                .filter(t -> t.rounded() <= other.rounded() - threshold)
                .or(() -> Optional.of(other));
    }

    private static Optional<Action> first(List<Action> actions, boolean test) {
        return actions.stream()
                .filter(a -> (a.type() == Action.Type.TEST) == test)
                .findFirst();
    }

    private boolean[] done(Evidence evidence) {
        boolean[] done = new boolean[model.size()];
        evidence.failedRepairs().stream()
                .map(FailedRepair::repair)
                .filter(id -> !isShared(id))
                .forEach(id -> done[model.index(id)] = true);
        return done;
    }

    private boolean isShared(String id) {
        return model.category().sharedRepairs().stream().anyMatch(s -> s.id().equals(id));
    }

    private List<Action> tests(Lookahead now, double plan, Evidence evidence, BenchSituation situation) {
        Answers answers = Answers.of(model, evidence);
        double couldSave = plan - now.lowerBound();
        List<Action> tests = new ArrayList<>();
        for (int f = 0; f < model.findings(); f++) {
            double minutes = testMinutes(f, situation);
            if (answers.offers(f) && !(settings.prune() && minutes >= couldSave)) {
                String id = model.finding(f).id();
                tests.add(new Action(Action.Type.TEST, id, minutes, minutes + now.minutesAfter(f)));
            }
        }
        boolean deep = settings.lookaheadTests() > 0 && (long) model.size() * model.findings() <= SMALL;
        return deep ? deepened(tests, now, answers, situation) : tests;
    }

    private double testMinutes(int f, BenchSituation situation) {
        Finding finding = model.finding(f);
        return finding.minutes()
                + settings.minutes(finding.risk())
                + situation.setUpMinutes().getOrDefault(finding.id(), 0.0);
    }

    private List<Action> deepened(List<Action> tests, Lookahead now, Answers answers, BenchSituation situation) {
        List<Action> sorted = new ArrayList<>(tests);
        sorted.sort(Action::compare);
        for (int k = 0; k < Math.min(settings.lookaheadTests(), sorted.size()); k++) {
            Action t = sorted.get(k);
            double after = twoSteps(model.findingIndex(t.id()), now, answers, situation);
            sorted.set(k, new Action(t.type(), t.id(), t.minutes(), t.minutes() + after));
        }
        return sorted;
    }

    /** Sum over the values of a test of the best that one more test, or none, leads to. */
    private double twoSteps(int first, Lookahead now, Answers answers, BenchSituation situation) {
        double sum = 0;
        for (int v = 0; v < model.table(first).size(); v++) {
            Lookahead then = now.after(first, v, settings);
            Answers known = answers.with(first, model.finding(first).values().get(v));
            double best = then.planMinutes();
            for (int f = 0; f < model.findings(); f++) {
                if (known.offers(f)) {
                    best = Math.min(best, testMinutes(f, situation) * then.mass() + then.minutesAfter(f));
                }
            }
            sum += best;
        }
        return sum;
    }

    /** The first repair of the order that no gate holds back. */
    private List<Action> repairs(double[] p, int[] order, BenchSituation situation, List<Advice.Blocked> blocked) {
        List<Action> open = new ArrayList<>();
        for (int i : order) {
            Cause c = model.category().causes().get(i);
            List<String> reasons = RepairGate.reasons(c.repair(), p[i], List.of(c), situation, settings);
            if (!reasons.isEmpty()) {
                blocked.add(new Advice.Blocked(c.id(), reasons));
            } else if (open.isEmpty()) {
                open.add(repair(p, order, i));
            }
        }
        return open;
    }

    /** Failure leaves the order of the others as it is. */
    private Action repair(double[] p, int[] order, int i) {
        double[] left = p.clone();
        left[i] *= 1 - repairs.fix[i];
        int[] others = Arrays.stream(order).filter(k -> k != i).toArray();
        double minutes = repairs.minutes[i];
        return new Action(Action.Type.REPAIR, model.id(i), minutes, minutes + repairs.least(left, others));
    }

    private List<Action> shared(
            double[] p, boolean[] done, Evidence evidence, BenchSituation situation, List<Advice.Blocked> blocked) {
        List<Action> open = new ArrayList<>();
        for (SharedRepair s : model.category().sharedRepairs()) {
            if (evidence.failedRepairs().stream().noneMatch(f -> f.repair().equals(s.id()))) {
                shared(p, done, s, situation, blocked).ifPresent(open::add);
            }
        }
        return open;
    }

    /** Scored at the top only: inside the plan every cause keeps its own repair. */
    private Optional<Action> shared(
            double[] p, boolean[] done, SharedRepair s, BenchSituation situation, List<Advice.Blocked> blocked) {
        Map<String, Double> fixes = new TreeMap<>(s.fixes());
        double[] left = p.clone();
        double covered = 0;
        for (Map.Entry<String, Double> e : fixes.entrySet()) {
            int i = model.index(e.getKey());
            covered += p[i];
            left[i] *= 1 - e.getValue();
        }
        List<Cause> causes = model.category().causes().stream()
                .filter(c -> fixes.containsKey(c.id()))
                .sorted(Comparator.comparing(Cause::id))
                .toList();
        List<String> reasons = RepairGate.reasons(s.repair(), covered, causes, situation, settings);
        if (!reasons.isEmpty()) {
            blocked.add(new Advice.Blocked(s.id(), reasons));
            return Optional.empty();
        }
        double minutes = RepairOrder.minutes(s.repair(), settings);
        double expected = minutes + repairs.planMinutes(left, done);
        return Optional.of(new Action(Action.Type.REPAIR, s.id(), minutes, expected));
    }
}
