package org.benchtrail.core.diagnosis;

import java.util.Arrays;
import java.util.BitSet;
import java.util.IdentityHashMap;
import java.util.Map;

/**
 * Expected plan minutes after a test, for one belief.
 *
 * <p>Algorithm: a test multiplies the weight of every cause of a group by the same number, so those keep their order. Only the
 * few deviating causes are sorted anew; groups and deviators are merged: O(n) per value instead of O(n log n), and the scan
 * ends as soon as the minutes spent exceed the best plan found. A repair as the last one of a plan pays only if its ratio is
 * above what is left then over the minutes of escalating, and at least the unlisted cause is left and what the surest repair
 * misses of the others: whatever lies below that is not looked at. Not safe for use by several threads.
 */
final class Lookahead {
    /** Below this share of the mass the difference in the scan has lost too many digits; the exact sums are taken. */
    private static final double LOST_DIGITS = 1e-9;

    private static final int[] NONE = {};

    private final Model model;
    private final PlanSettings settings;
    private final double rho;
    private final RepairOrder repairs;
    private final double[] parts;
    private final double[] weights;
    private final boolean[] done;
    private final int[] order;
    private final double[] ratio;
    private final double listed;
    private final Dealt undealt;
    private final IdentityHashMap<int[], Dealt> dealt = new IdentityHashMap<>();

    /** The question whose deviators are marked, by cause. */
    private final int[] markedFor;

    private int question;

    private final int[] sorted;
    private final double[] sortedRatio;
    private final double[] sortedWeight;
    private final double[] sortedMinutes;

    /** Weights of the causes that deviate, after a value. */
    private final double[] moved;

    /** Highest probability that a repair fixes its cause. */
    private final double surest;

    /** Repairs of no higher ratio end no best plan. */
    private double least;

    /** Heads of the groups while they are merged: place in the list, and its ratio by now. */
    private int[] at = {};

    private double[] head = {};

    /** The order dealt into groups, with the ratios in each list and the mass of each group. */
    private record Dealt(int[][] lists, double[][] ratios, double[] mass) {}

    /** @param parts weight of each part, the unlisted cause last; not necessarily normalised */
    Lookahead(Model model, PlanSettings settings, RepairOrder repairs, double[] parts, boolean[] done) {
        this.model = model;
        this.settings = settings;
        this.rho = settings.plannedReliability();
        this.repairs = repairs;
        this.parts = parts;
        this.weights = model.causes(parts);
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
        undealt = deal(new int[n], 1);
        markedFor = new int[n];
        sorted = new int[n];
        sortedRatio = new double[n];
        sortedWeight = new double[n];
        sortedMinutes = new double[n];
        moved = new double[n];
        surest = Arrays.stream(repairs.fix).max().orElse(1);
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

    /** No plan that starts from here, with any tests that only tell, takes less. */
    double lowerBound() {
        double bound = weights[repairs.size()] * repairs.escalateMinutes;
        for (int i = 0; i < repairs.size(); i++) {
            bound += weights[i] * Math.min(repairs.minutes[i], repairs.escalateMinutes);
        }
        return bound;
    }

    /** Sum over the finding's values of the plan's minutes then; the test's own minutes are not in it. */
    double minutesAfter(int finding) {
        UnitTable unit = model.unitTable(finding);
        question++;
        mark(unit.table().deviators);
        mark(unit.mixed());
        int[] mended = unmarked(model.curable(finding));
        mark(mended);
        Dealt groups = deal(unit.table());
        double sum = 0;
        for (int v = 0; v < unit.table().size(); v++) {
            sum += minutesAfter(finding, unit, mended, groups, v);
        }
        return sum;
    }

    /** Those that do not deviate: their minutes do. */
    private int[] unmarked(BitSet causes) {
        return causes.isEmpty()
                ? NONE
                : causes.stream().filter(i -> markedFor[i] != question).toArray();
    }

    private void mark(int[] causes) {
        for (int i : causes) {
            markedFor[i] = question;
        }
    }

    /** The margin is for rounding: a repair that neither helps nor hurts may be looked at. */
    private double least(double mass, double outside) {
        double left = outside + Math.max(0, mass - outside) * (1 - surest);
        return left / repairs.escalateMinutes * (1 - LOST_DIGITS);
    }

    /** What a report whose true value nobody reported weighs, by the number of values. */
    private double noise(int size) {
        return (1 - rho) / size;
    }

    private double minutesAfter(int finding, UnitTable unit, int[] mended, Dealt groups, int v) {
        LikelihoodTable table = unit.table();
        double noise = noise(table.size());
        double[] factor = new double[table.base.length];
        double mass = 0;
        for (int g = 0; g < factor.length; g++) {
            factor[g] = rho * table.base[g][v] + noise;
            mass += groups.mass[g] * factor[g];
        }
        double outside = weights[repairs.size()] * (rho * table.unlisted[v] + noise);
        mass += outside;
        int k = 0;
        for (int i : table.deviators) {
            double p = rho * table.rows[k][v] + noise;
            mass += weights[i] * (p - factor[table.group[i]]);
            moved[k++] = weights[i] * p;
        }
        for (int i : unit.mixed()) {
            moved[k] = mixedWeight(finding, i, v);
            mass += moved[k++] - weights[i] * factor[table.group[i]];
        }
        least = least(mass, outside);
        BitSet cured = model.curedBy(finding, v);
        int m = insert(0, table.deviators, 0, cured);
        m = insert(m, unit.mixed(), table.deviators.length, cured);
        for (int i : mended) {
            m = done[i] ? m : insert(m, i, weights[i] * factor[table.group[i]], minutes(i, cured));
        }
        double best = merge(groups, factor, mass, m);
        return best >= 0 ? best : repairs(cured).planMinutes(model.causes(after(finding, v)), done);
    }

    /** @param from where the weights of these causes stand among those that moved */
    private int insert(int sortedSoFar, int[] causes, int from, BitSet cured) {
        int m = sortedSoFar;
        for (int k = 0; k < causes.length; k++) {
            m = done[causes[k]] ? m : insert(m, causes[k], moved[from + k], minutes(causes[k], cured));
        }
        return m;
    }

    private double mixedWeight(int finding, int cause, int v) {
        LikelihoodTable table = model.table(finding);
        double weight = 0;
        for (int p : model.parts(cause)) {
            weight += parts[p] * (rho * table.row(p, -1)[v] + noise(table.size()));
        }
        return weight;
    }

    private double minutes(int cause, BitSet cured) {
        double own = repairs.minutes[cause];
        return !cured.isEmpty() && cured.get(cause) ? Math.min(own, settings.leaveMinutes()) : own;
    }

    private RepairOrder repairs(BitSet cured) {
        return cured.isEmpty()
                ? repairs
                : repairs.atMost(settings.leaveMinutes(), cured.stream().toArray());
    }

    /**
     * The plan's minutes if a repair of several causes were carried out without success; its own minutes are not in it.
     *
     * @param spent whether causes that it covers in all their parts have no other repair
     */
    double minutesWithout(Map<Integer, Double> fixes, boolean spent) {
        question++;
        double[] left = parts.clone();
        fixes.forEach((part, q) -> left[part] *= 1 - q);
        double[] causes = model.causes(left);
        boolean[] tried = done.clone();
        double mass = 0;
        for (double weight : causes) {
            mass += weight;
        }
        least = least(mass, causes[repairs.size()]);
        int m = 0;
        for (int i = 0; i < repairs.size(); i++) {
            if (causes[i] != weights[i]) {
                markedFor[i] = question;
                tried[i] |= spent && model.covers(fixes, i);
                m = tried[i] ? m : insert(m, i, causes[i], repairs.minutes[i]);
            }
        }
        double best = merge(undealt, new double[] {1}, mass, m);
        return best >= 0 ? best : repairs.planMinutes(causes, tried);
    }

    private Dealt deal(LikelihoodTable table) {
        return table.base.length == 1 ? undealt : dealt.computeIfAbsent(table.group, g -> deal(g, table.base.length));
    }

    private Dealt deal(int[] group, int groups) {
        double[] mass = new double[groups];
        for (int i = 0; i < group.length; i++) {
            mass[group[i]] += weights[i];
        }
        int[] size = new int[groups];
        for (int i : order) {
            size[group[i]]++;
        }
        int[][] lists = new int[groups][];
        double[][] ratios = new double[groups][];
        for (int g = 0; g < groups; g++) {
            lists[g] = new int[size[g]];
            ratios[g] = new double[size[g]];
            size[g] = 0;
        }
        for (int i : order) {
            int g = group[i];
            lists[g][size[g]] = i;
            ratios[g][size[g]++] = ratio[i];
        }
        return new Dealt(lists, ratios, mass);
    }

    /** Insertion into the first m sorted deviators: they are few. */
    private int insert(int m, int cause, double weight, double minutes) {
        double r = weight * repairs.fix[cause] / minutes;
        if (r <= least) {
            return m;
        }
        int k = m;
        while (k > 0 && sortedRatio[k - 1] < r) {
            sorted[k] = sorted[k - 1];
            sortedRatio[k] = sortedRatio[k - 1];
            sortedWeight[k] = sortedWeight[k - 1];
            sortedMinutes[k] = sortedMinutes[k - 1];
            k--;
        }
        sorted[k] = cause;
        sortedRatio[k] = r;
        sortedWeight[k] = weight;
        sortedMinutes[k] = minutes;
        return m + 1;
    }

    /** Least expected minutes over all prefixes of the merged order; -1 if digits were lost. */
    private double merge(Dealt groups, double[] factor, double mass, int m) {
        begin(groups, factor);
        double escalate = repairs.escalateMinutes;
        double lost = LOST_DIGITS * mass;
        double alive = mass;
        double spent = 0;
        double best = mass * escalate;
        int d = 0;
        while (true) {
            int g = next(factor.length);
            double fixed;
            if (g >= 0 && (d >= m || head[g] >= sortedRatio[d])) {
                int i = groups.lists[g][at[g]];
                spent += alive * repairs.minutes[i];
                fixed = weights[i] * factor[g] * repairs.fix[i];
                advance(groups, factor, g, at[g] + 1);
            } else if (d < m) {
                spent += alive * sortedMinutes[d];
                fixed = sortedWeight[d] * repairs.fix[sorted[d]];
                d++;
            } else {
                return best;
            }
            if (spent >= best) {
                return best;
            }
            alive -= fixed;
            if (alive < lost) {
                return -1;
            }
            best = Math.min(best, spent + alive * escalate);
        }
    }

    private void begin(Dealt groups, double[] factor) {
        if (at.length < factor.length) {
            at = new int[factor.length];
            head = new double[factor.length];
        }
        for (int g = 0; g < factor.length; g++) {
            advance(groups, factor, g, 0);
        }
    }

    /** Moves the head of a group to its first cause from there on that is not marked. */
    private void advance(Dealt groups, double[] factor, int g, int from) {
        int[] list = groups.lists[g];
        int k = from;
        while (k < list.length && markedFor[list[k]] == question) {
            k++;
        }
        at[g] = k;
        head[g] = k < list.length ? groups.ratios[g][k] * factor[g] : -1;
    }

    /** The group whose head is best; -1 if no head can end a best plan. */
    private int next(int groups) {
        int best = -1;
        double most = least;
        for (int g = 0; g < groups; g++) {
            if (head[g] > most) {
                most = head[g];
                best = g;
            }
        }
        return best;
    }

    private double[] after(int finding, int v) {
        LikelihoodTable table = model.table(finding);
        double[] next = table.column(v, model.parts());
        for (int i = 0; i < next.length; i++) {
            next[i] = parts[i] * (rho * next[i] + noise(table.size()));
        }
        return next;
    }

    /** The belief after one value of a finding, not normalised. */
    Lookahead after(int finding, int value, PlanSettings settings) {
        return new Lookahead(model, settings, repairs(model.curedBy(finding, value)), after(finding, value), done);
    }
}
