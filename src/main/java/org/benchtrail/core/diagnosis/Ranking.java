package org.benchtrail.core.diagnosis;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The causes of one ticket, ranked by their probability given the evidence (Bayes' rule in log space).
 *
 * <p>Shape: n+1 probabilities, the last for the cause that is not listed.
 * <p>Domain: any evidence the model knows; unknown answers and reports of reliability 0 weigh nothing.
 * <p>Guarantees: probabilities sum to 1 within 1e-12; the order of causes, findings and reports does not matter; the same
 * model and evidence give the same bits.
 * <p>Source: naive Bayes with a reliability channel; D. Heckerman, E. Horvitz, B. Nathwani, "Toward normative expert
 * systems", Methods of Information in Medicine 31, 1992 (from memory, not checked). Differs: the unlisted cause and the correlation discount
 * are our own choices.
 */
public final class Ranking {
    private final Model model;
    private final Evidence evidence;
    private final List<Observed> observed;
    /** Log weight of each part. */
    private final double[] score;

    private final double[] partProbability;
    private final double[] probability;

    private Ranking(Model model, Evidence evidence) {
        this.model = model;
        this.evidence = evidence;
        observed = Observed.of(model, evidence);
        score = model.logPriors();
        for (Observed o : observed) {
            o.addTo(score, model.table(o.finding()));
        }
        for (FailedRepair failed : evidence.failedRepairs()) {
            model.addFailed(score, failed);
        }
        partProbability = normalised(score);
        probability = model.causes(partProbability);
    }

    /** @throws org.benchtrail.core.Invalid with everything in the evidence that the model does not know */
    public static Ranking of(Model model, Evidence evidence) {
        model.require(evidence);
        return new Ranking(model, evidence);
    }

    static double[] normalised(double[] score) {
        double max = Double.NEGATIVE_INFINITY;
        for (double s : score) {
            max = Math.max(max, s);
        }
        double[] p = new double[score.length];
        double sum = 0;
        for (int i = 0; i < p.length; i++) {
            p[i] = StrictMath.exp(score[i] - max);
            sum += p[i];
        }
        for (int i = 0; i < p.length; i++) {
            p[i] /= sum;
        }
        return p;
    }

    public Model model() {
        return model;
    }

    public Evidence evidence() {
        return evidence;
    }

    /** Probability of a cause, or of {@link Model#UNLISTED}; in [0, 1]. */
    public double probability(String cause) {
        return probability[model.index(cause)];
    }

    /** Probability by index; n for the unlisted cause. */
    public double probability(int cause) {
        return probability[cause];
    }

    /** Log-odds of a cause against everything else, decibans. */
    public double decibans(String cause) {
        return Decibans.against(model.causeScores(score), model.index(cause));
    }

    /** A cause with its probability. */
    public record Ranked(String cause, double probability) {}

    /** All causes and the unlisted one, most probable first; equal ones by id. */
    public List<Ranked> all() {
        return IntStream.range(0, probability.length)
                .mapToObj(i -> new Ranked(model.id(i), probability[i]))
                .sorted(Comparator.comparingDouble(Ranked::probability)
                        .reversed()
                        .thenComparing(Ranked::cause))
                .toList();
    }

    /** The most probable of all, the unlisted one included. */
    public String leader() {
        return all().get(0).cause();
    }

    /** The most probable cause of the catalogue; equal ones by id. */
    public String topListed() {
        return model.id(topIndex());
    }

    int topIndex() {
        int[] rank = model.idRank();
        int top = 0;
        int candidates = model.listed() > 0 ? model.listed() : rank.length;
        for (int i = 1; i < candidates; i++) {
            int order = Double.compare(probability[i], probability[top]);
            top = order > 0 || (order == 0 && rank[i] < rank[top]) ? i : top;
        }
        return top;
    }

    double[] probabilities() {
        return probability.clone();
    }

    /** Probability of each part in the order of {@link Structure#parts}, then of the unlisted cause; a copy. */
    public double[] partProbabilities() {
        return partProbability.clone();
    }

    /** The part of a cause in which most of the belief in it lies. */
    int heaviest(int cause) {
        int[] of = model.parts(cause);
        int heaviest = of[0];
        for (int p : of) {
            heaviest = partProbability[p] > partProbability[heaviest] ? p : heaviest;
        }
        return heaviest;
    }

    List<Observed> observed() {
        return observed;
    }
}
