package org.benchtrail.core.diagnosis;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * Why the ranking is what it is, in decibans that add up.
 *
 * <p>Guarantee: the terms of either view sum to the log-odds they explain within 1e-9 dB.
 */
public final class Explanation {
    private final Ranking ranking;
    private final Model model;

    public Explanation(Ranking ranking) {
        this.ranking = ranking;
        this.model = ranking.model();
    }

    /** Where a term comes from. */
    public enum Origin {
        PRIOR,
        FINDING,
        FAILED_REPAIR
    }

    /**
     * One contribution.
     *
     * @param id of the finding or repair; empty for the prior
     * @param decibans positive speaks for the cause
     */
    public record Term(Origin origin, String id, double decibans) {
        public String words() {
            return Words.strength(decibans);
        }
    }

    /** Contributions with their sum, decibans. */
    public record Weighing(List<Term> terms, double total) {}

    /** The leader against the runner-up. */
    public Weighing leaderAgainstRunnerUp() {
        List<Ranking.Ranked> all = ranking.all();
        return pair(all.get(0).cause(), all.get(1).cause());
    }

    /**
     * One cause against another; the order of the findings does not matter, unless one of the two may sit in several places.
     *
     * @throws org.benchtrail.core.Invalid if either is not known
     */
    public Weighing pair(String a, String b) {
        int i = model.index(a);
        int j = model.index(b);
        if (model.isSplit(i) || model.isSplit(j)) {
            return inSteps(s -> {
                double[] causes = model.causeScores(s);
                return Decibans.PER_NAT * (causes[i] - causes[j]);
            });
        }
        List<Term> terms = new ArrayList<>();
        terms.add(new Term(Origin.PRIOR, "", Decibans.PER_NAT * (model.logPrior(i) - model.logPrior(j))));
        for (Observed o : ranking.observed()) {
            terms.add(new Term(Origin.FINDING, id(o), o.decibans(model, model.parts(i)[0], model.parts(j)[0])));
        }
        for (FailedRepair f : ranking.evidence().failedRepairs()) {
            terms.add(new Term(Origin.FAILED_REPAIR, f.repair(), failed(f, i) - failed(f, j)));
        }
        return account(terms);
    }

    private double failed(FailedRepair f, int cause) {
        Double q = model.fixes(f.repair()).get(model.parts(cause)[0]);
        return q == null ? 0 : Decibans.PER_NAT * StrictMath.log1p(-q);
    }

    private static Weighing account(List<Term> terms) {
        return new Weighing(
                List.copyOf(terms), terms.stream().mapToDouble(Term::decibans).sum());
    }

    private String id(Observed o) {
        return model.finding(o.finding()).id();
    }

    /**
     * One cause against everything else, in the order the answers came in, each with the weight it has now. How much a term
     * shows depends on that order.
     */
    public Weighing waterfall(String cause) {
        int i = model.index(cause);
        return inSteps(s -> Decibans.against(model.causeScores(s), i));
    }

    /** @param decibans what is explained, of the log weights of all parts */
    private Weighing inSteps(ToDoubleFunction<double[]> decibans) {
        double[] score = model.logPriors();
        double before = decibans.applyAsDouble(score);
        List<Term> terms = new ArrayList<>();
        terms.add(new Term(Origin.PRIOR, "", before));
        for (Arrival step : steps()) {
            step.addTo(score);
            double after = decibans.applyAsDouble(score);
            terms.add(new Term(step.origin(), step.id(), after - before));
            before = after;
        }
        return account(terms);
    }

    private interface Adding {
        void addTo(double[] score);
    }

    private record Arrival(Origin origin, String id, Instant at, Adding effect) {
        void addTo(double[] score) {
            effect.addTo(score);
        }
    }

    private List<Arrival> steps() {
        List<Arrival> steps = new ArrayList<>();
        for (Observed o : ranking.observed()) {
            steps.add(new Arrival(Origin.FINDING, id(o), o.since(), s -> o.addTo(s, model.table(o.finding()))));
        }
        for (FailedRepair f : ranking.evidence().failedRepairs()) {
            steps.add(new Arrival(Origin.FAILED_REPAIR, f.repair(), f.at(), s -> model.addFailed(s, f)));
        }
        steps.sort(Comparator.comparing(Arrival::at).thenComparing(Arrival::id));
        return steps;
    }

    /**
     * What if this answer is wrong: for each finding, the log-odds of the cause as they are, less what they would be had the
     * finding not been asked, decibans.
     */
    public List<Term> whatIfWrong(String cause) {
        double now = ranking.decibans(cause);
        return ranking.observed().stream()
                .map(o -> new Term(Origin.FINDING, id(o), now - without(id(o)).decibans(cause)))
                .toList();
    }

    /** The findings of which each alone, left out, gives another leader. */
    public List<String> flips() {
        String leader = ranking.leader();
        return ranking.observed().stream()
                .map(this::id)
                .filter(f -> !without(f).leader().equals(leader))
                .toList();
    }

    private Ranking without(String finding) {
        return Ranking.of(model, ranking.evidence().without(finding));
    }
}
