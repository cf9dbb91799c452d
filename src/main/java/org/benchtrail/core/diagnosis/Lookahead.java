package org.benchtrail.core.diagnosis;

import java.util.Arrays;

/**
 * Expected plan minutes after a test, for one belief.
 *
 * <p>Algorithm: a test multiplies the weight of every cause that does not deviate on it by the same number, so those keep
 * their order. Only the few deviating causes are sorted anew and merged in: O(n) per value instead of O(n log n), and the
 * scan ends as soon as the minutes spent exceed the best plan found. Not safe for use by several threads.
 */
final class Lookahead {
    /** Below this share of the mass the difference in the scan has lost too many digits; the exact sums are taken. */
    private static final double LOST_DIGITS = 1e-9;

    private final Model model;
    private final double rho;
    private final RepairOrder repairs;
    private final double[] weights;
    private final boolean[] done;
    private final int[] order;
    private final double[] ratio;
    private final double listed;

    /** The finding whose deviators are marked, by cause; -1 for none. */
    private final int[] markedFor;

    private final int[] sorted;
    private final double[] sortedRatio;
    private final double[] sortedWeight;

    Lookahead(Model model, PlanSettings settings, RepairOrder repairs, double[] weights, boolean[] done) {
        this.model = model;
        this.rho = settings.plannedReliability();
        this.repairs = repairs;
        this.weights = weights;
        this.done = done;
        int n = repairs.size();
        order = repairs.order(weights, done);
        ratio = new double[n];
        double sum = 0;
        for (int i = 0; i < n; i++) {
            ratio[i] = weights[i] * repairs.fix[i] / repairs.minutes[i];
            sum += weights[i];
        }
        listed = sum;
        markedFor = new int[n];
        Arrays.fill(markedFor, -1);
        sorted = new int[n];
        sortedRatio = new double[n];
        sortedWeight = new double[n];
    }

    /** The repairs not done, best first. */
    int[] order() {
        return order;
    }

    double mass() {
        return listed + weights[repairs.size()];
    }

    double planMinutes() {
        return repairs.least(weights, order);
    }

    /** No plan that starts from here, with any tests, takes less. */
    double lowerBound() {
        double bound = weights[repairs.size()] * repairs.escalateMinutes;
        for (int i = 0; i < repairs.size(); i++) {
            bound += weights[i] * Math.min(repairs.minutes[i], repairs.escalateMinutes);
        }
        return bound;
    }

    /** Sum over the finding's values of the plan's minutes then; the test's own minutes are not in it. */
    double minutesAfter(int finding) {
        LikelihoodTable table = model.table(finding);
        for (int i : table.deviators) {
            markedFor[i] = finding;
        }
        double sum = 0;
        for (int v = 0; v < table.size(); v++) {
            sum += minutesAfter(finding, table, v);
        }
        return sum;
    }

    private double planned(double p, int size) {
        return rho == 1 ? p : rho * p + (1 - rho) / size;
    }

    private double minutesAfter(int finding, LikelihoodTable table, int v) {
        int size = table.size();
        double background = planned(table.background[v], size);
        double mass = listed * background + weights[repairs.size()] * planned(table.unlisted[v], size);
        int m = 0;
        for (int k = 0; k < table.deviators.length; k++) {
            int i = table.deviators[k];
            double p = planned(table.rows[k][v], size);
            mass += weights[i] * (p - background);
            m = done[i] ? m : insert(m, i, weights[i] * p);
        }
        double best = merge(finding, background, mass, m);
        return best >= 0 ? best : repairs.planMinutes(after(table, v), done);
    }

    /** Insertion into the first m sorted deviators: they are few. */
    private int insert(int m, int cause, double weight) {
        double r = weight * repairs.fix[cause] / repairs.minutes[cause];
        int k = m;
        while (k > 0 && sortedRatio[k - 1] < r) {
            sorted[k] = sorted[k - 1];
            sortedRatio[k] = sortedRatio[k - 1];
            sortedWeight[k] = sortedWeight[k - 1];
            k--;
        }
        sorted[k] = cause;
        sortedRatio[k] = r;
        sortedWeight[k] = weight;
        return m + 1;
    }

    /** Least expected minutes over all prefixes of the merged order; -1 if digits were lost. */
    private double merge(int finding, double background, double mass, int m) {
        double escalate = repairs.escalateMinutes;
        double alive = mass;
        double spent = 0;
        double best = mass * escalate;
        int a = 0;
        int d = 0;
        while (true) {
            while (a < order.length && markedFor[order[a]] == finding) {
                a++;
            }
            int i;
            double weight;
            if (a < order.length && (d >= m || ratio[order[a]] * background >= sortedRatio[d])) {
                i = order[a++];
                weight = weights[i] * background;
            } else if (d < m) {
                i = sorted[d];
                weight = sortedWeight[d++];
            } else {
                return best;
            }
            spent += alive * repairs.minutes[i];
            if (spent >= best) {
                return best;
            }
            alive -= weight * repairs.fix[i];
            if (alive < LOST_DIGITS * mass) {
                return -1;
            }
            best = Math.min(best, spent + alive * escalate);
        }
    }

    private double[] after(LikelihoodTable table, int v) {
        double[] next = new double[weights.length];
        for (int i = 0; i < next.length; i++) {
            next[i] = weights[i] * planned(table.row(i, repairs.size())[v], table.size());
        }
        return next;
    }

    /** The belief after one value of a finding, not normalised. */
    Lookahead after(int finding, int value, PlanSettings settings) {
        return new Lookahead(model, settings, repairs, after(model.table(finding), value), done);
    }
}
