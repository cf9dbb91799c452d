package org.benchtrail.core.diagnosis;

import java.util.List;

/** Slow, literal references for what the fast code computes. */
final class Belief {
    private Belief() {}

    static double p(Model m, int f, int cause, int value) {
        return m.table(f).row(cause, m.size())[value];
    }

    /** Posterior by the formulas as written, in plain products. */
    static double[] posterior(Model m, Evidence e) {
        double[] w = new double[m.size() + 1];
        for (int i = 0; i <= m.size(); i++) {
            w[i] = m.prior(i);
            for (Finding f : m.category().findings()) {
                w[i] *= Math.pow(likelihood(m, e, f, i), exponent(m, e, f));
            }
            for (FailedRepair r : e.failedRepairs()) {
                w[i] *= 1 - m.fixes(r.repair()).getOrDefault(i, 0.0);
            }
        }
        double sum = 0;
        for (double x : w) {
            sum += x;
        }
        for (int i = 0; i < w.length; i++) {
            w[i] /= sum;
        }
        return w;
    }

    private static List<Report> on(Evidence e, Finding f) {
        return e.reports().stream()
                .filter(r -> r.finding().equals(f.id()) && r.isInformative())
                .toList();
    }

    private static double likelihood(Model m, Evidence e, Finding f, int cause) {
        double sum = 0;
        int size = f.values().size();
        for (int v = 0; v < size; v++) {
            double x = p(m, m.findingIndex(f.id()), cause, v);
            for (Report r : on(e, f)) {
                double hit = r.value().equals(f.values().get(v)) ? r.reliability() : 0;
                x *= hit + (1 - r.reliability()) / size;
            }
            sum += x;
        }
        return sum;
    }

    private static double exponent(Model m, Evidence e, Finding f) {
        if (f.group() == null) {
            return m.settings().beta();
        }
        long k = m.category().findings().stream()
                .filter(g -> f.group().equals(g.group()) && !on(e, g).isEmpty())
                .count();
        return m.settings().beta() / (1 + m.correlation(f.group()) * Math.max(0, k - 1));
    }

    /** Least expected minutes over every ordered subset of repairs, then escalating. */
    static double bestSubset(RepairOrder r, double[] w, boolean[] done) {
        double mass = 0;
        for (double x : w) {
            mass += x;
        }
        double best = mass * r.escalateMinutes;
        for (int i = 0; i < r.size(); i++) {
            if (!done[i]) {
                double[] left = w.clone();
                left[i] *= 1 - r.fix[i];
                boolean[] tried = done.clone();
                tried[i] = true;
                best = Math.min(best, mass * r.minutes[i] + bestSubset(r, left, tried));
            }
        }
        return best;
    }
}
