package org.benchtrail.core.diagnosis;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiFunction;

/**
 * A problem small enough to solve exactly: every state is which answers are known and which repairs failed. Tests are reports
 * of one reliability, both in the plan and in what they show.
 */
final class SmallWorld {
    static final double RHO = Report.MOST_RELIABLE;
    static final PlanSettings PLAN = PlanSettings.STANDARD.withoutRiskMinutes().withPlannedReliability(RHO);

    final Model model;
    private final RepairOrder repairs;
    private double rho = RHO;
    private final Map<String, Double> solved = new HashMap<>();

    /** No groups: with them the order of questions would matter to the belief. */
    SmallWorld(long seed, int causes, int tests, ModelSettings settings) {
        CauseCategory c = Invented.random(seed, causes, tests, false);
        List<Finding> plain =
                c.findings().stream().map(f -> Invented.grouped(f, null)).toList();
        model = new Model(new CauseCategory(c.id(), c.title(), 240, List.of(), plain, c.causes(), List.of()), settings);
        repairs = RepairOrder.of(model, PLAN);
    }

    double[] prior() {
        return Ranking.of(model, Evidence.NONE).probabilities();
    }

    double planMinutes() {
        return repairs.planMinutes(prior(), new boolean[model.size()]);
    }

    double lowerBound() {
        return new Lookahead(model, PLAN, repairs, prior(), new boolean[model.size()]).lowerBound();
    }

    private double[] after(double[] w, int f, int v) {
        double[] next = w.clone();
        double[] g = LikelihoodTable.channel(v, rho, model.table(f).size());
        for (int i = 0; i < w.length; i++) {
            next[i] *= LikelihoodTable.likelihood(model.table(f).row(i, model.size()), g);
        }
        return next;
    }

    /** Expected minutes of the best adaptive policy. */
    double optimum() {
        return optimum(prior(), "-".repeat(model.findings()).toCharArray(), new boolean[model.size()]);
    }

    private double optimum(double[] w, char[] answers, boolean[] done) {
        String state = new String(answers) + Arrays.toString(done);
        Double known = solved.get(state);
        if (known != null) {
            return known;
        }
        double mass = Arrays.stream(w).sum();
        double best = mass * repairs.escalateMinutes;
        for (int i = 0; i < done.length; i++) {
            if (!done[i]) {
                double[] left = w.clone();
                left[i] *= 1 - repairs.fix[i];
                done[i] = true;
                best = Math.min(best, mass * repairs.minutes[i] + optimum(left, answers, done));
                done[i] = false;
            }
        }
        for (int f = 0; f < answers.length; f++) {
            if (answers[f] == '-') {
                double q = mass * model.finding(f).minutes();
                for (int v = 0; v < model.table(f).size(); v++) {
                    answers[f] = (char) ('0' + v);
                    q += optimum(after(w, f, v), answers, done);
                }
                answers[f] = '-';
                best = Math.min(best, q);
            }
        }
        solved.put(state, best);
        return best;
    }

    /** Expected minutes of following a policy, every answer and outcome counted; tests made on average by the second entry. */
    double[] followed(BiFunction<Model, Evidence, Action> policy) {
        return followed(policy, Evidence.NONE);
    }

    /** The same with reports of another reliability. */
    double[] followed(BiFunction<Model, Evidence, Action> policy, double reliability) {
        rho = reliability;
        double[] result = followed(policy);
        rho = RHO;
        return result;
    }

    private double[] followed(BiFunction<Model, Evidence, Action> policy, Evidence e) {
        Action a = policy.apply(model, e);
        return switch (a.type()) {
            case ESCALATE -> new double[] {repairs.escalateMinutes, 0};
            case REPAIR, PREPARE -> repaired(policy, e, model.index(a.id()));
            case TEST -> tested(policy, e, model.findingIndex(a.id()));
        };
    }

    private double[] repaired(BiFunction<Model, Evidence, Action> policy, Evidence e, int i) {
        double fails = 1 - Ranking.of(model, e).probability(i) * repairs.fix[i];
        double[] then = followed(policy, e.with(new FailedRepair(model.id(i), 0, Invented.T0)));
        return new double[] {repairs.minutes[i] + fails * then[0], fails * then[1]};
    }

    private double[] tested(BiFunction<Model, Evidence, Action> policy, Evidence e, int f) {
        Finding finding = model.finding(f);
        double[] p = Ranking.of(model, e).probabilities();
        double[] sum = {finding.minutes(), 1};
        for (int v = 0; v < finding.values().size(); v++) {
            double chance = Arrays.stream(after(p, f, v)).sum();
            Report r = Invented.report(
                    finding.id(), finding.values().get(v), rho, e.reports().size());
            double[] then = followed(policy, e.with(r));
            sum[0] += chance * then[0];
            sum[1] += chance * then[1];
        }
        return sum;
    }
}
