package org.benchtrail.core.diagnosis;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.benchtrail.core.Invalid;
import org.jspecify.annotations.Nullable;

/**
 * A category made ready to compute with. Immutable; one serves any number of tickets of its catalogue version.
 *
 * <p>Shape: n causes with indices 0 to n-1, those of the catalogue first and in its order; index n is the cause that is not
 * listed. Beliefs are computed over parts, of which a plain category has one for each cause.
 * <p>Domain: exactly one cause explains a ticket, and it sits in one place; findings are independent given the part.
 */
public final class Model {
    /** Id of the cause that is not in the list. */
    public static final String UNLISTED = "UNLISTED";

    private static final BitSet NONE = new BitSet();

    /** A cure by indices. */
    private record Cured(int value, BitSet causes) {}

    private final CauseCategory category;
    private final ModelSettings settings;
    private final int listed;
    private final double[] prior;
    private final double[] logPrior;
    private final double[] partLogPrior;
    private final List<LikelihoodTable> tables;
    private final List<UnitTable> unitTables;
    private final List<CausePart> parts;
    /** For each cause its parts; null if every cause is one part. */
    private final int @Nullable [][] partsOf;

    private final Map<Integer, Cured> cures = new TreeMap<>();
    /** By finding; the same as a list that is quick to look into. */
    private final @Nullable Cured[] curedBy;

    private final Map<String, List<String>> confirming;
    private final Map<String, Integer> causeIndex = new HashMap<>();
    private final Map<String, Integer> partIndex = new HashMap<>();
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
        listed = share.length;
        prior = priors(share, settings.unlisted());
        logPrior = logs(prior);
        partLogPrior = logPrior;
        parts = List.of();
        partsOf = null;
        tables = category.findings().stream()
                .map(f -> LikelihoodTable.of(f, category.causes(), share, settings))
                .toList();
        unitTables = tables.stream().map(t -> UnitTable.of(t, null, t.group)).toList();
        confirming = Map.of();
        curedBy = curedBy();
        idRank = rank();
    }

    private Model(CauseCategory category, ModelSettings settings, Structure structure) {
        this.category = category;
        this.settings = settings;
        index();
        listed = structure.listed();
        parts = structure.parts();
        partsOf = partsOf();
        prior = new double[category.causes().size() + 1];
        prior[size()] = structure.unlisted();
        parts.forEach(p -> prior[index(p.cause())] += p.prior());
        logPrior = logs(prior);
        double[] partPrior =
                Arrays.copyOf(parts.stream().mapToDouble(CausePart::prior).toArray(), parts.size() + 1);
        partPrior[parts.size()] = structure.unlisted();
        partLogPrior = partsOf == null ? logPrior : logs(partPrior);
        tables = structure.tables();
        unitTables = unitTables();
        structure.cures().forEach(this::cured);
        curedBy = curedBy();
        confirming = structure.confirming();
        idRank = rank();
    }

    private Model(Model other, ModelSettings settings) {
        this.category = other.category;
        this.settings = settings;
        index();
        listed = other.listed;
        prior = other.prior;
        logPrior = other.logPrior;
        partLogPrior = other.partLogPrior;
        parts = other.parts;
        partsOf = other.partsOf;
        partIndex.putAll(other.partIndex);
        tables = other.tables;
        unitTables = other.unitTables;
        cures.putAll(other.cures);
        curedBy = other.curedBy;
        confirming = other.confirming;
        idRank = other.idRank;
    }

    /**
     * A model of causes that sit in places.
     *
     * @param category whose causes are those of the catalogue that can be on this ticket, then those that stand for what nobody
     *     listed; whose findings are in the order of the structure's tables. It is taken as valid
     */
    public static Model of(CauseCategory category, ModelSettings settings, Structure structure) {
        return new Model(category, settings, structure);
    }

    /** The same with another exponent on all evidence; priors and tables are shared. */
    Model withBeta(double beta) {
        return new Model(this, settings.withBeta(beta));
    }

    private int @Nullable [][] partsOf() {
        List<List<Integer>> of = new ArrayList<>();
        category.causes().forEach(c -> of.add(new ArrayList<>()));
        for (int p = 0; p < parts.size(); p++) {
            partIndex.put(parts.get(p).id(), p);
            of.get(index(parts.get(p).cause())).add(p);
        }
        return parts.size() == of.size()
                ? null
                : of.stream().map(l -> l.stream().mapToInt(p -> p).toArray()).toArray(int[][]::new);
    }

    private void cured(Cure cure) {
        int finding = findingIndex(cure.finding());
        BitSet causes = new BitSet();
        cure.causes().forEach(c -> causes.set(index(c)));
        cures.put(finding, new Cured(tables.get(finding).values.indexOf(cure.value()), causes));
    }

    /** Groups that tables share over the parts are shared over the causes as well. */
    private List<UnitTable> unitTables() {
        IdentityHashMap<int[], int[]> groups = new IdentityHashMap<>();
        return tables.stream()
                .map(t -> UnitTable.of(t, partsOf, groups.computeIfAbsent(t.group, this::groupsOfCauses)))
                .toList();
    }

    private int[] groupsOfCauses(int[] ofParts) {
        return partsOf == null
                ? ofParts
                : Arrays.stream(partsOf).mapToInt(of -> ofParts[of[0]]).toArray();
    }

    private static double[] logs(double[] p) {
        return Arrays.stream(p).map(StrictMath::log).toArray();
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

    /** Number of causes, n. */
    public int size() {
        return category.causes().size();
    }

    /** How many of them, the first ones, are entries of the catalogue. */
    public int listed() {
        return listed;
    }

    /** Number of parts of all causes; the unlisted cause comes after them. */
    int parts() {
        return partLogPrior.length - 1;
    }

    /** The parts of a cause; the unlisted cause is its own. */
    int[] parts(int cause) {
        if (partsOf == null) {
            return new int[] {cause};
        }
        return cause == size() ? new int[] {parts()} : partsOf[cause];
    }

    boolean isSplit(int cause) {
        return partsOf != null && cause < size() && partsOf[cause].length > 1;
    }

    /** Beliefs in parts added up to beliefs in causes. */
    double[] causes(double[] ofParts) {
        if (partsOf == null) {
            return ofParts;
        }
        double[] sum = new double[size() + 1];
        for (int i = 0; i <= size(); i++) {
            for (int p : parts(i)) {
                sum[i] += ofParts[p];
            }
        }
        return sum;
    }

    /** Log weights of parts added up to log weights of causes. */
    double[] causeScores(double[] ofParts) {
        if (partsOf == null) {
            return ofParts;
        }
        double[] sum = new double[size() + 1];
        for (int i = 0; i <= size(); i++) {
            int[] of = parts(i);
            sum[i] = ofParts[of[0]];
            for (int k = 1; k < of.length; k++) {
                double high = Math.max(sum[i], ofParts[of[k]]);
                double low = Math.min(sum[i], ofParts[of[k]]);
                sum[i] = high + StrictMath.log1p(StrictMath.exp(low - high));
            }
        }
        return sum;
    }

    /** Index of a cause; n for {@link #UNLISTED}.
     * @throws Invalid if the category has no such cause */
    public int index(String cause) {
        if (cause.equals(UNLISTED)) {
            return category.causes().size();
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
     * How probable a value of a finding is under a cause, as clamped; of a cause in several places, in the first of them.
     *
     * @param cause id of a cause or of a part
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
        Integer part = causeIndex.containsKey(cause) ? null : partIndex.get(cause);
        return tables.get(f).row(part == null ? parts(index(cause))[0] : part, parts())[v];
    }

    /** By part, the unlisted cause last. */
    double[] logPriors() {
        return partLogPrior.clone();
    }

    double logPrior(int cause) {
        return logPrior[cause];
    }

    /** Over the parts. */
    LikelihoodTable table(int finding) {
        return tables.get(finding);
    }

    /** Over the causes. */
    UnitTable unitTable(int finding) {
        return unitTables.get(finding);
    }

    private @Nullable Cured[] curedBy() {
        @Nullable Cured[] all = new Cured[tables.size()];
        cures.forEach((finding, cured) -> all[finding] = cured);
        return all;
    }

    /** The causes that an outcome of a test leaves mended; none if the test only tells. */
    BitSet curedBy(int finding, int value) {
        Cured c = curedBy[finding];
        return c != null && c.value() == value ? c.causes() : NONE;
    }

    /** The causes that some outcome of a test leaves mended. */
    BitSet curable(int finding) {
        Cured c = curedBy[finding];
        return c == null ? NONE : c.causes();
    }

    /** Whether an outcome of the test may leave the device mended. */
    boolean mayCure(int finding) {
        return curedBy[finding] != null;
    }

    /** The tests that may. */
    Set<Integer> cures() {
        return cures.keySet();
    }

    /** Tests that may confirm a cause. */
    List<String> confirming(String cause) {
        return confirming.getOrDefault(cause, List.of());
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

    /** Probability that the repair fixes each part it covers: those of its own cause, or those of a shared repair. */
    Map<Integer, Double> fixes(String repair) {
        SharedRepair s = shared.get(repair);
        Map<Integer, Double> fixes = new TreeMap<>();
        if (s == null) {
            int i = index(repair);
            double q = category.causes().get(i).repair().fixProbability();
            for (int p : parts(i)) {
                fixes.put(p, q);
            }
            return fixes;
        }
        s.fixes().forEach((id, q) -> {
            Integer part = causeIndex.containsKey(id) ? null : partIndex.get(id);
            for (int p : part == null ? parts(index(id)) : new int[] {part}) {
                fixes.put(p, q);
            }
        });
        return fixes;
    }

    boolean isShared(String repair) {
        return shared.containsKey(repair);
    }

    /** A repair by its id: that of a cause, or a shared one. */
    Repair repair(String id) {
        SharedRepair s = shared.get(id);
        return s != null ? s.repair() : category.causes().get(index(id)).repair();
    }

    /** Whether a shared repair covers all parts of a cause. */
    boolean covers(Map<Integer, Double> fixes, int cause) {
        return Arrays.stream(parts(cause)).allMatch(fixes::containsKey);
    }

    /** Whether the repair is that of a place as a whole: what it covers has no better one. */
    boolean isOfPlace(Map<Integer, Double> fixes) {
        return fixes.keySet().stream().anyMatch(part -> causeOf(part) >= listed);
    }

    /** The cause that a part belongs to. */
    int causeOf(int part) {
        return partsOf == null ? part : index(parts.get(part).cause());
    }

    /** Adds ln(1-q) to the log weight of every part that the repair would have fixed. */
    void addFailed(double[] score, FailedRepair failed) {
        fixes(failed.repair()).forEach((part, q) -> score[part] += StrictMath.log1p(-q));
    }

    /**
     * For each value of a finding the belief in the parts if it is answered, times the chance that it is.
     *
     * @param parts belief in each part, the unlisted cause last
     * @param reliability of the report
     */
    public List<double[]> after(String finding, double[] parts, double reliability) {
        LikelihoodTable table = tables.get(findingIndex(finding));
        List<double[]> all = new ArrayList<>();
        for (int v = 0; v < table.size(); v++) {
            double[] next = table.column(v, parts());
            for (int i = 0; i < next.length; i++) {
                next[i] = parts[i] * (reliability * next[i] + (1 - reliability) / table.size());
            }
            all.add(next);
        }
        return all;
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
