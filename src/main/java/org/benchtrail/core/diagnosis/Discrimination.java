package org.benchtrail.core.diagnosis;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * How far a finding would tell one cause, the theory, from all others together, the unlisted one included.
 *
 * <p>Units: decibans. D is by how much a result is expected to move the odds of the theory towards the truth, whichever it is:
 * the expected weight of evidence, weighed by the belief. It is 0 if and only if both rows are equal.
 * <p>Source: I. J. Good's expected weight of evidence. Chosen over the information about "the theory or not", which vanishes
 * where the theory is already likely: a theory at 90 % still deserves a test that could overturn it.
 */
public final class Discrimination {
    /** A finding is offered from this expectation on, dB. */
    private static final double LEAST = 1;
    /** At least one of its values has to move the odds by that much, dB. */
    private static final double LEAST_VALUE = 3;
    /** From here on a value rules the theory out, dB. */
    private static final double RULES_OUT = -7;

    private static final double CHECK = 0.5;
    private static final int OFFERED = 3;

    private final Ranking ranking;
    private final Model model;
    private final int theory;
    private final double reliability;

    /**
     * @param cause id of the theory's cause
     * @param reliability planned, in [0, 0.98]
     */
    public Discrimination(Ranking ranking, String cause, double reliability) {
        this.ranking = ranking;
        this.model = ranking.model();
        this.theory = model.index(cause);
        this.reliability = reliability;
    }

    /** What a value of a test would do to the theory. */
    public enum Bearing {
        SUPPORTS,
        RULES_OUT,
        LEAVES_OPEN
    }

    /**
     * A finding against the theory.
     *
     * @param minutes to make it, risk and set-up included
     * @param weights of each value, dB: what it would do to the odds of the theory
     * @param ifRight expected weight if the theory is right, dB; zero or more
     * @param ifWrong the same if it is wrong
     * @param expected D, dB
     * @param sign the value to expect if the theory is right
     * @param chance of that value if it is right
     */
    public record Offer(
            String finding,
            double minutes,
            Map<String, Double> weights,
            double ifRight,
            double ifWrong,
            double expected,
            String sign,
            double chance) {
        /** Whether not seeing the sign speaks against the theory; otherwise seeing it would prove it, and not seeing says little. */
        public boolean isCheck() {
            return chance >= CHECK;
        }

        /** Whether any of its values would move the odds of the theory enough to be worth it. */
        public boolean tells() {
            return weights.values().stream().anyMatch(w -> Math.abs(w) >= LEAST_VALUE);
        }

        /** What the value would do, as it is preset when the answer is recorded. */
        public Bearing bearing(String value) {
            double w = weights.getOrDefault(value, 0.0);
            if (w >= LEAST_VALUE) {
                return Bearing.SUPPORTS;
            }
            return w <= RULES_OUT ? Bearing.RULES_OUT : Bearing.LEAVES_OPEN;
        }
    }

    /** @throws org.benchtrail.core.Invalid if the category has no such finding */
    public Offer of(String finding, double minutes) {
        int f = model.findingIndex(finding);
        List<String> values = model.finding(f).values();
        double[] right = planned(mixed(f, false));
        Divergence apart = Divergence.of(right, planned(mixed(f, true)));
        Map<String, Double> weights = new LinkedHashMap<>();
        int sign = 0;
        for (int v = 0; v < values.size(); v++) {
            weights.put(values.get(v), apart.weights[v]);
            sign = right[v] * apart.weights[v] > right[sign] * apart.weights[sign] ? v : sign;
        }
        double expected = apart.expected(ranking.probabilities()[theory]);
        return new Offer(
                finding, minutes, weights, apart.ifRight, apart.ifWrong, expected, values.get(sign), right[sign]);
    }

    /**
     * Two predictions of one result.
     *
     * @param weights of each value, dB
     * @param ifRight expected weight under the first, dB; zero or more
     * @param ifWrong the same under the second, turned round
     */
    record Divergence(double[] weights, double ifRight, double ifWrong) {
        /** Both without zeros, each summing to 1. */
        static Divergence of(double[] right, double[] wrong) {
            double[] weights = new double[right.length];
            double ifRight = 0;
            double ifWrong = 0;
            for (int v = 0; v < right.length; v++) {
                weights[v] = Decibans.PER_NAT * (StrictMath.log(right[v]) - StrictMath.log(wrong[v]));
                ifRight += right[v] * weights[v];
                ifWrong -= wrong[v] * weights[v];
            }
            return new Divergence(weights, ifRight, ifWrong);
        }

        /** By how much a result is expected to move the odds towards the truth, dB. */
        double expected(double belief) {
            return belief * ifRight + (1 - belief) * ifWrong;
        }
    }

    /** What the theory predicts, or all other causes together; summed, not taken from one, so that nothing is lost. */
    private double[] mixed(int f, boolean others) {
        BitSet own = new BitSet();
        Arrays.stream(model.parts(theory)).forEach(own::set);
        double[] p = ranking.partProbabilities();
        double[] mixed = new double[model.table(f).size()];
        double mass = 0;
        for (int part = 0; part < p.length; part++) {
            if (own.get(part) != others) {
                mass += p[part];
                add(mixed, p[part], model.table(f).row(part, model.parts()));
            }
        }
        for (int v = 0; v < mixed.length; v++) {
            mixed[v] /= mass;
        }
        return mixed;
    }

    private static void add(double[] sum, double weight, double[] row) {
        for (int v = 0; v < sum.length; v++) {
            sum[v] += weight * row[v];
        }
    }

    private double[] planned(double[] row) {
        double[] p = new double[row.length];
        for (int v = 0; v < p.length; v++) {
            p[v] = reliability * row[v] + (1 - reliability) / p.length;
        }
        return p;
    }

    /** The tests worth offering for the theory, at most three, those that tell most for their minutes first. */
    public List<Offer> offers(PlanSettings settings, BenchSituation situation) {
        Answers answers = Answers.of(model, ranking.evidence());
        List<Offer> offers = new ArrayList<>();
        for (int f = 0; f < model.findings(); f++) {
            Finding finding = model.finding(f);
            boolean held = situation.withheld().contains(finding.id());
            if (answers.offers(f) && !held) {
                Offer offer = of(finding.id(), situation.minutes(finding, settings));
                boolean tells = offer.weights().values().stream().anyMatch(w -> Math.abs(w) >= LEAST_VALUE);
                if (tells && offer.expected() >= LEAST) {
                    offers.add(offer);
                }
            }
        }
        offers.sort(Comparator.comparingDouble((Offer o) -> -o.expected() / o.minutes())
                .thenComparing(Offer::finding));
        return offers.subList(0, Math.min(OFFERED, offers.size()));
    }

    /**
     * The cause that a test speaks for most: the likeliest that names the finding as what settles it; else the one whose
     * abnormal values it would raise most above what is expected anyhow.
     */
    public static String favoured(Ranking ranking, String finding) {
        Model model = ranking.model();
        List<Cause> causes = model.category().causes();
        double[] p = ranking.probabilities();
        int f = model.findingIndex(finding);
        int best = -1;
        double most = -1;
        boolean named = causes.stream().anyMatch(c -> c.confirmBy().contains(finding));
        for (int i = 0; i < model.listed(); i++) {
            boolean counts = !named || causes.get(i).confirmBy().contains(finding);
            double score = named ? p[i] : p[i] * raised(ranking, f, i);
            if (counts && score > most) {
                most = score;
                best = i;
            }
        }
        return model.id(best);
    }

    private static double raised(Ranking ranking, int f, int cause) {
        Discrimination one = new Discrimination(ranking, ranking.model().id(cause), 1);
        double p = ranking.probabilities()[cause];
        double[] own = one.mixed(f, false);
        double[] others = one.mixed(f, true);
        double sum = 0;
        for (int v = 1; v < own.length; v++) {
            sum += Math.max(0, own[v] - (p * own[v] + (1 - p) * others[v]));
        }
        return sum;
    }
}
