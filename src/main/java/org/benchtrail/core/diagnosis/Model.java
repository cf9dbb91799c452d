package org.benchtrail.core.diagnosis;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.Invalid;

/**
 * A category made ready to compute with. Immutable; one serves any number of tickets of its catalogue version.
 *
 * <p>Shape: n listed causes with indices 0 to n-1 in catalogue order; index n is the cause that is not listed.
 * <p>Domain: exactly one cause explains a ticket; findings are independent given the cause.
 */
public final class Model {
    /** Id of the cause that is not in the list. */
    public static final String UNLISTED = "UNLISTED";

    private final CauseCategory category;
    private final ModelSettings settings;
    private final double[] prior;
    private final double[] logPrior;
    private final List<LikelihoodTable> tables;
    private final Map<String, Integer> causeIndex = new HashMap<>();
    private final Map<String, Integer> findingIndex = new HashMap<>();
    private final Map<String, SharedRepair> shared = new HashMap<>();
    private final int[] idRank;

    /** @throws Invalid with every problem of the category */
    public Model(CauseCategory category, ModelSettings settings) {
        CatalogueRules.require(List.of(category));
        this.category = category;
        this.settings = settings;
        index();
        double[] share = share(category.causes());
        prior = priors(share, settings.unlisted());
        logPrior = new double[prior.length];
        for (int i = 0; i < prior.length; i++) {
            logPrior[i] = StrictMath.log(prior[i]);
        }
        tables = category.findings().stream()
                .map(f -> LikelihoodTable.of(f, category.causes(), share, settings))
                .toList();
        idRank = rank();
    }

    private Model(Model other, ModelSettings settings) {
        this.category = other.category;
        this.settings = settings;
        index();
        prior = other.prior;
        logPrior = other.logPrior;
        tables = other.tables;
        idRank = other.idRank;
    }

    /** The same with another exponent on all evidence; priors and tables are shared. */
    Model withBeta(double beta) {
        return new Model(this, settings.withBeta(beta));
    }

    private void index() {
        for (int i = 0; i < category.causes().size(); i++) {
            causeIndex.put(category.causes().get(i).id(), i);
            for (String before : category.causes().get(i).was()) {
                causeIndex.put(before, i);
            }
        }
        for (int f = 0; f < category.findings().size(); f++) {
            findingIndex.put(category.findings().get(f).id(), f);
        }
        category.sharedRepairs().forEach(s -> shared.put(s.id(), s));
    }

    private static double[] share(List<Cause> causes) {
        double sum = causes.stream().mapToDouble(Cause::weight).sum();
        return causes.stream().mapToDouble(c -> c.weight() / sum).toArray();
    }

    private static double[] priors(double[] share, double unlisted) {
        double[] p = new double[share.length + 1];
        for (int i = 0; i < share.length; i++) {
            p[i] = (1 - unlisted) * share[i];
        }
        p[share.length] = unlisted;
        return p;
    }

    private int[] rank() {
        List<String> sorted = category.causes().stream().map(Cause::id).sorted().toList();
        int[] rank = new int[sorted.size()];
        for (int r = 0; r < rank.length; r++) {
            rank[index(sorted.get(r))] = r;
        }
        return rank;
    }

    public CauseCategory category() {
        return category;
    }

    public ModelSettings settings() {
        return settings;
    }

    /** Number of listed causes, n. */
    public int size() {
        return idRank.length;
    }

    /** Index of a cause; n for {@link #UNLISTED}.
     * @throws Invalid if the category has no such cause */
    public int index(String cause) {
        if (cause.equals(UNLISTED)) {
            return size();
        }
        Integer i = causeIndex.get(cause);
        if (i == null) {
            throw new Invalid(
                    "cause", "name a cause of category '" + category.id() + "': '" + cause + "' is not listed");
        }
        return i;
    }

    /** Id of a cause by index; {@link #UNLISTED} for n. */
    public String id(int cause) {
        return cause == size() ? UNLISTED : category.causes().get(cause).id();
    }

    /** Prior probability by index, n+1 entries in all. */
    public double prior(int cause) {
        return prior[cause];
    }

    /**
     * How probable a value of a finding is under a cause, as clamped.
     *
     * @throws Invalid if the category has no such finding or cause
     * @throws IllegalArgumentException if the finding has no such value
     */
    public double likelihood(String finding, String value, String cause) {
        int f = findingIndex(finding);
        int v = category.findings().get(f).values().indexOf(value);
        if (v < 0) {
            throw new IllegalArgumentException("finding '" + finding + "' has no value '" + value + "'");
        }
        return tables.get(f).row(index(cause), size())[v];
    }

    double[] logPriors() {
        return logPrior.clone();
    }

    double logPrior(int cause) {
        return logPrior[cause];
    }

    LikelihoodTable table(int finding) {
        return tables.get(finding);
    }

    int findings() {
        return tables.size();
    }

    Finding finding(int f) {
        return category.findings().get(f);
    }

    /** @throws Invalid if the category has no such finding */
    int findingIndex(String finding) {
        Integer f = findingIndex.get(finding);
        if (f == null) {
            throw new Invalid(
                    "finding", "name a finding of category '" + category.id() + "': '" + finding + "' is not listed");
        }
        return f;
    }

    int[] idRank() {
        return idRank.clone();
    }

    double correlation(String group) {
        return category.groups().stream()
                .filter(g -> g.id().equals(group))
                .mapToDouble(Group::correlation)
                .findFirst()
                .orElseThrow();
    }

    /** Probability that the repair fixes each listed cause it covers: its own cause, or those of a shared repair. */
    Map<String, Double> fixes(String repair) {
        SharedRepair s = shared.get(repair);
        return s != null
                ? s.fixes()
                : Map.of(repair, category.causes().get(index(repair)).repair().fixProbability());
    }

    /** Adds ln(1-q) to the log weight of every cause that the repair would have fixed. */
    void addFailed(double[] score, FailedRepair failed) {
        fixes(failed.repair()).forEach((cause, q) -> score[index(cause)] += StrictMath.log1p(-q));
    }

    /** @throws Invalid with everything in the evidence that this category does not know */
    void require(Evidence evidence) {
        List<Invalid.Problem> problems = new ArrayList<>();
        for (int k = 0; k < evidence.reports().size(); k++) {
            report(evidence.reports().get(k), "reports[" + k + "]", problems);
        }
        for (int k = 0; k < evidence.failedRepairs().size(); k++) {
            String id = evidence.failedRepairs().get(k).repair();
            if (!causeIndex.containsKey(id) && !shared.containsKey(id)) {
                String at = "failedRepairs[" + k + "].repair";
                problems.add(new Invalid.Problem(at, "name a cause or a shared repair: '" + id + "' is not listed"));
            }
        }
        if (!problems.isEmpty()) {
            throw new Invalid(problems);
        }
    }

    private void report(Report r, String at, List<Invalid.Problem> problems) {
        Integer f = findingIndex.get(r.finding());
        if (f == null) {
            problems.add(new Invalid.Problem(at + ".finding", "name a finding: '" + r.finding() + "' is not listed"));
        } else if (!Report.SILENT.contains(r.value()) && !finding(f).values().contains(r.value())) {
            String choices = String.join(", ", finding(f).values());
            problems.add(new Invalid.Problem(at + ".value", "choose one of " + choices + ", not '" + r.value() + "'"));
        }
    }
}
