package org.benchtrail.core.diagnosis;

import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.jspecify.annotations.Nullable;

/**
 * Learns a category's figures from a site's accepted cases.
 *
 * <p>Always from the whole list of cases and the catalogue as delivered, never from an earlier result: the same cases give
 * the same figures, in whatever order they are listed.
 *
 * <p>Source: Dirichlet and beta pseudo-counts, A. Gelman et al., "Bayesian Data Analysis", 3rd ed., sections 2.4 and 3.4
 * (from memory, not checked). Differs: decay, and caps on what one person's cases can move.
 */
public final class Learning {
    /** One case in so many is not in the list, before anything is learned. */
    private static final double UNLISTED_PRIOR = 1;

    private static final double CLAMP_LOW = 0.01;
    private static final double CLAMP_HIGH = 0.99;

    private final CauseCategory category;
    private final LearningSettings settings;
    private final List<ClosedCase> cases;
    private final double[] listedWeights;
    private final double[] allWeights;
    private final Tally observed;
    private final Tally intake;

    private Learning(CauseCategory category, List<ClosedCase> all, Instant now, LearningSettings settings) {
        this.category = category;
        this.settings = settings;
        this.cases = all.stream()
                .filter(ClosedCase::counts)
                .sorted(Comparator.comparing(ClosedCase::id))
                .toList();
        double[] raw = cases.stream().mapToDouble(c -> decayed(c, now)).toArray();
        double[] listed = raw.clone();
        for (int k = 0; k < listed.length; k++) {
            listed[k] = cases.get(k).cause().equals(Model.UNLISTED) ? 0 : listed[k];
        }
        allWeights = ShareCap.weights(cases, raw, settings.priorCount(), rules());
        listedWeights = ShareCap.weights(cases, listed, settings.priorCount(), rules());
        observed = Tally.of(cases, listedWeights, o -> true);
        intake = Tally.of(cases, listedWeights, ClosedCase.CaseFinding::intake);
    }

    /**
     * @param category as delivered, with catalogue weights
     * @param cases of this category; those not verified, not accepted by another, or only presumed do not count
     * @param now the moment that ages are taken from
     * @return the category as it is, to the bit, if no case counts
     * @throws Invalid with every case whose cause is neither listed nor {@link Model#UNLISTED}
     */
    public static Learned learn(
            CauseCategory category, List<ClosedCase> cases, Instant now, LearningSettings settings) {
        requireKnown(category, cases);
        Learning learning = new Learning(category, cases, now, settings);
        return sum(learning.allWeights) > 0 ? learning.learned() : Learned.practice(category);
    }

    /** Weight for a cause added to the catalogue: half the median of the category's. */
    public static double newCauseWeight(CauseCategory category) {
        double[] w =
                category.causes().stream().mapToDouble(Cause::weight).sorted().toArray();
        int middle = w.length / 2;
        return (w.length % 2 == 1 ? w[middle] : (w[middle - 1] + w[middle]) / 2) / 2;
    }

    private static void requireKnown(CauseCategory category, List<ClosedCase> cases) {
        List<String> known = category.causes().stream().map(Cause::id).toList();
        Invalid.Collector problems = new Invalid.Collector();
        for (int k = 0; k < cases.size(); k++) {
            String cause = cases.get(k).cause();
            problems.require(
                    cause.equals(Model.UNLISTED) || known.contains(cause),
                    "cases[" + k + "].cause",
                    "name a cause of category '" + category.id() + "': '" + cause + "' is not listed");
        }
        problems.throwIfAny();
    }

    private double decayed(ClosedCase c, Instant now) {
        double days = Math.max(0, Duration.between(c.closed(), now).toSeconds() / 86_400.0);
        return StrictMath.pow(2, -days / settings.halfLifeDays())
                * c.confirmation().weight();
    }

    private List<ShareCap.Cap> rules() {
        return List.of(
                new ShareCap.Cap(ClosedCase::technician, settings.technicianShare()),
                new ShareCap.Cap(ClosedCase::site, settings.siteShare()),
                new ShareCap.Cap(ClosedCase::acceptedBy, settings.supervisorShare()));
    }

    private Learned learned() {
        List<Cause> causes = category.causes().stream().map(this::cause).toList();
        List<Finding> findings = category.findings().stream().map(this::finding).toList();
        return new Learned(category.learned(findings, causes), unlisted(), sum(listedWeights), support());
    }

    private Support support() {
        Map<String, Backing> causes = new HashMap<>();
        Map<String, Map<String, Backing>> tables = new HashMap<>();
        Map<String, Backing> backgrounds = new HashMap<>();
        causes.put(Model.UNLISTED, new Backing(settings.priorCount(), sum(allWeights)));
        for (Cause c : category.causes()) {
            causes.put(c.id(), new Backing(pseudoCount(c), count(c)));
            Map<String, Backing> rows = new HashMap<>();
            for (Finding f : category.findings()) {
                double seen = sum(observed.of(c.id(), f));
                if (seen > 0) {
                    rows.put(f.id(), new Backing(settings.tableCount(), seen));
                }
            }
            tables.put(c.id(), Map.copyOf(rows));
        }
        for (Finding f : category.findings()) {
            backgrounds.put(f.id(), new Backing(settings.tableCount(), sum(untouched(f))));
        }
        return new Support(causes, tables, backgrounds);
    }

    private static double sum(double[] x) {
        double sum = 0;
        for (double v : x) {
            sum += v;
        }
        return sum;
    }

    /** Beta posterior mean, kept within what a model takes. */
    private double unlisted() {
        double hits = UNLISTED_PRIOR;
        for (int k = 0; k < allWeights.length; k++) {
            hits += cases.get(k).cause().equals(Model.UNLISTED) ? allWeights[k] : 0;
        }
        double share = hits / (settings.priorCount() + sum(allWeights));
        return Math.min(ModelSettings.MOST_UNLISTED, Math.max(ModelSettings.LEAST_UNLISTED, share));
    }

    /** Cases that the catalogue's weight is worth. */
    private double pseudoCount(Cause c) {
        double all = category.causes().stream().mapToDouble(Cause::weight).sum();
        return settings.priorCount() * c.weight() / all;
    }

    /** Cases of the cause, decayed and capped. */
    private double count(Cause c) {
        double count = 0;
        for (int k = 0; k < cases.size(); k++) {
            count += cases.get(k).cause().equals(c.id()) ? listedWeights[k] : 0;
        }
        return count;
    }

    private Cause cause(Cause c) {
        double weight = pseudoCount(c) + count(c);
        List<Deviation> deviations = category.findings().stream()
                .flatMap(f -> Stream.ofNullable(deviation(c, f)))
                .toList();
        return c.learned(weight, deviations);
    }

    /** What is now believed of a finding under a cause; null where neither catalogue nor cases say anything. */
    private @Nullable Deviation deviation(Cause c, Finding f) {
        double[] counts = observed.of(c.id(), f);
        Map<String, Double> named = named(c, f);
        if (sum(counts) > 0) {
            return new Deviation(f.id(), dirichlet(f, named == null ? f.background() : named, counts));
        }
        return named == null ? null : new Deviation(f.id(), named);
    }

    private static @Nullable Map<String, Double> named(Cause c, Finding f) {
        return c.deviations().stream()
                .filter(d -> d.finding().equals(f.id()))
                .map(Deviation::probabilities)
                .findFirst()
                .orElse(null);
    }

    /**
     * Background from intake answers on cases whose cause does not touch the finding: an answer asked for because it was
     * suspected says nothing about how often it is so.
     */
    private Finding finding(Finding f) {
        double[] counts = untouched(f);
        return sum(counts) > 0 ? f.withBackground(dirichlet(f, f.background(), counts)) : f;
    }

    /** Intake answers by value on cases whose cause does not touch the finding. */
    private double[] untouched(Finding f) {
        double[] counts = new double[f.values().size()];
        for (Cause c : category.causes()) {
            if (named(c, f) == null) {
                double[] more = intake.of(c.id(), f);
                for (int v = 0; v < counts.length; v++) {
                    counts[v] += more[v];
                }
            }
        }
        return counts;
    }

    private Map<String, Double> dirichlet(Finding f, Map<String, Double> at, double[] counts) {
        double prior = settings.tableCount();
        double all = prior + sum(counts);
        double[] p = new double[counts.length];
        for (int v = 0; v < p.length; v++) {
            double mean = (prior * at.getOrDefault(f.values().get(v), 0.0) + counts[v]) / all;
            p[v] = Math.min(CLAMP_HIGH, Math.max(CLAMP_LOW, mean));
        }
        Map<String, Double> out = new HashMap<>();
        for (int v = 0; v < p.length; v++) {
            out.put(f.values().get(v), p[v] / sum(p));
        }
        return out;
    }
}
