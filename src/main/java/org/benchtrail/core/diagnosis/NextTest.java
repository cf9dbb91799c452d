package org.benchtrail.core.diagnosis;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The next best act: the test, repair or escalation with the least expected remaining minutes.
 *
 * <p>One step of lookahead: after the act, the plan of {@link RepairOrder} is followed. A test is recommended only if it
 * saves at least the threshold; otherwise the better of repairing and escalating. Stop-work hazards come before any ranking.
 * A repair that a gate holds back is not skipped: if it is the best act, the advice is to prepare it, and what it still needs
 * is in its minutes. A repair below the floor is never advised.
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

    public NextTest(Model model, PlanSettings settings) {
        this.model = model;
        this.settings = settings;
    }

    /** The repairs of this category with their minutes at this site, as long as nothing they need is met. */
    public RepairOrder repairs() {
        return RepairOrder.of(model, settings);
    }

    /** @param ranking of this model */
    public Advice advise(Ranking ranking, BenchSituation situation) {
        Answers answers = Answers.of(model, ranking.evidence());
        BitSet cured = cured(answers);
        RepairOrder repairs = RepairOrder.of(model, settings, situation.met())
                .atMost(settings.leaveMinutes(), cured.stream().toArray());
        boolean[] done = done(ranking.evidence());
        Lookahead now = new Lookahead(model, settings, repairs, ranking.partProbabilities(), done);
        double plan = now.planMinutes();
        double threshold = Math.max(settings.thresholdMinutes(), settings.thresholdShare() * plan);
        if (!situation.hazards().isEmpty()) {
            return new Advice(
                    situation.hazards(), List.of(), Optional.empty(), List.of(), Optional.empty(), plan, threshold);
        }
        Tests tests = new Tests(model, settings, situation);
        RepairActs acts = new RepairActs(model, settings, situation, ranking, repairs, now, cured);
        List<Action> actions = new ArrayList<>(tests.all(now, answers, plan));
        actions.addAll(acts.all());
        double escalate = repairs.escalateMinutes;
        actions.add(new Action(Action.Type.ESCALATE, Action.ESCALATE_ID, escalate, escalate));
        actions.sort(Action::compare);
        Action chosen = choose(actions, threshold);
        Optional<Advice.Preparation> preparation = chosen.type() == Action.Type.PREPARE
                ? Optional.of(acts.preparation(chosen.id(), id -> tests.offered(id, now, answers)))
                : Optional.empty();
        return new Advice(
                situation.hazards(), actions, Optional.of(chosen), acts.blocked(), preparation, plan, threshold);
    }

    private static Action choose(List<Action> actions, double threshold) {
        Action other = first(actions, false).orElseThrow();
        return first(actions, true)
                .filter(t -> t.rounded() <= other.rounded() - threshold)
                .orElse(other);
    }

    private static Optional<Action> first(List<Action> actions, boolean test) {
        return actions.stream()
                .filter(a -> (a.type() == Action.Type.TEST) == test)
                .findFirst();
    }

    /** The causes that a test left mended as it stands. */
    private BitSet cured(Answers answers) {
        BitSet cured = new BitSet();
        for (int f : model.cures()) {
            for (int v = 0; v < model.table(f).size(); v++) {
                if (answers.is(f, v)) {
                    cured.or(model.curedBy(f, v));
                }
            }
        }
        return cured;
    }

    /** A failed repair of a place as a whole was that of every cause it covers. */
    private boolean[] done(Evidence evidence) {
        boolean[] done = new boolean[model.size()];
        for (FailedRepair failed : evidence.failedRepairs()) {
            Map<Integer, Double> fixes = model.fixes(failed.repair());
            if (!model.isShared(failed.repair())) {
                done[model.index(failed.repair())] = true;
            } else if (model.isOfPlace(fixes)) {
                for (int i = 0; i < done.length; i++) {
                    done[i] |= model.covers(fixes, i);
                }
            }
        }
        return done;
    }

    /** The tests on offer, and what each leads to. */
    private record Tests(Model model, PlanSettings settings, BenchSituation situation) {

        List<Action> all(Lookahead now, Answers answers, double plan) {
            double couldSave = plan - now.lowerBound();
            List<Action> tests = new ArrayList<>();
            for (int f = 0; f < model.findings(); f++) {
                boolean vain = settings.prune() && !model.mayCure(f) && minutes(f) >= couldSave;
                if (!vain && offers(f, answers)) {
                    tests.add(action(f, now));
                }
            }
            boolean deep = settings.lookaheadTests() > 0 && (long) model.size() * model.findings() <= SMALL;
            return deep ? deepened(tests, now, answers) : tests;
        }

        Optional<Action> offered(String id, Lookahead now, Answers answers) {
            int f = model.findingIndex(id);
            return offers(f, answers) ? Optional.of(action(f, now)) : Optional.empty();
        }

        private boolean offers(int f, Answers answers) {
            return answers.offers(f)
                    && !situation.withheld().contains(model.finding(f).id());
        }

        private Action action(int f, Lookahead now) {
            double minutes = minutes(f);
            return new Action(Action.Type.TEST, model.finding(f).id(), minutes, minutes + now.minutesAfter(f));
        }

        private double minutes(int f) {
            Finding finding = model.finding(f);
            return finding.minutes()
                    + settings.minutes(finding.risk())
                    + situation.setUpMinutes().getOrDefault(finding.id(), 0.0);
        }

        private List<Action> deepened(List<Action> tests, Lookahead now, Answers answers) {
            List<Action> sorted = new ArrayList<>(tests);
            sorted.sort(Action::compare);
            for (int k = 0; k < Math.min(settings.lookaheadTests(), sorted.size()); k++) {
                Action t = sorted.get(k);
                double after = twoSteps(model.findingIndex(t.id()), now, answers);
                sorted.set(k, new Action(t.type(), t.id(), t.minutes(), t.minutes() + after));
            }
            return sorted;
        }

        /** Sum over the values of a test of the best that one more test, or none, leads to. */
        private double twoSteps(int first, Lookahead now, Answers answers) {
            double sum = 0;
            for (int v = 0; v < model.table(first).size(); v++) {
                Lookahead then = now.after(first, v, settings);
                Answers known =
                        answers.with(first, model.finding(first).values().get(v));
                double best = then.planMinutes();
                for (int f = 0; f < model.findings(); f++) {
                    if (offers(f, known)) {
                        best = Math.min(best, minutes(f) * then.mass() + then.minutesAfter(f));
                    }
                }
                sum += best;
            }
            return sum;
        }
    }
}
