package org.benchtrail.core.diagnosis;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.benchtrail.core.Invalid;
import org.jspecify.annotations.Nullable;

/** What makes a catalogue acceptable. Collects every problem: a file is taken whole or not at all. */
public final class CatalogueRules {
    static final double LEAST_MINUTES = 0.5;
    static final double MOST_MINUTES = 10_000;
    static final double MOST_FIX = 0.99;
    private static final double SUM_TOLERANCE = 1e-9;
    private static final Set<String> READING_VALUES =
            Set.of(Finding.INSIDE, Finding.BELOW, Finding.ABOVE, Finding.OUTSIDE);
    private static final Set<String> RESERVED = Set.of(Model.UNLISTED, Action.ESCALATE_ID);

    private final List<Invalid.Problem> problems = new ArrayList<>();
    private final Set<String> categoryIds = new HashSet<>();
    private final Set<String> findingIds = new HashSet<>();
    private final Set<String> actIds = new HashSet<>();

    private CatalogueRules() {}

    /** Every problem of these categories, in the order of the entries; empty if there is none. */
    public static List<Invalid.Problem> problems(List<CauseCategory> categories) {
        CatalogueRules rules = new CatalogueRules();
        rules.require(!categories.isEmpty(), "categories", "list at least one category");
        for (int k = 0; k < categories.size(); k++) {
            rules.category(categories.get(k), "categories[" + k + "]");
        }
        return List.copyOf(rules.problems);
    }

    static void require(List<CauseCategory> categories) {
        List<Invalid.Problem> found = problems(categories);
        if (!found.isEmpty()) {
            throw new Invalid(found);
        }
    }

    private void require(boolean holds, String field, String sentence) {
        if (!holds) {
            problems.add(new Invalid.Problem(field, sentence));
        }
    }

    private void category(CauseCategory c, String at) {
        identify(categoryIds, c.id(), at + ".id");
        minutes(c.escalateMinutes(), at + ".escalateMinutes");
        require(!c.causes().isEmpty(), at + ".causes", "list at least one cause in category '" + c.id() + "'");
        Set<String> groups = groups(c, at);
        Map<String, Finding> findings = new HashMap<>();
        c.findings().forEach(f -> findings.putIfAbsent(f.id(), f));
        for (int k = 0; k < c.findings().size(); k++) {
            finding(c.findings().get(k), at + ".findings[" + k + "]", findings, groups);
        }
        cycles(c, at, findings);
        for (int k = 0; k < c.causes().size(); k++) {
            cause(c.causes().get(k), at + ".causes[" + k + "]", findings);
        }
        shared(c, at);
        new MakingRules(c, findings, at, problems::add).check();
    }

    private Set<String> groups(CauseCategory c, String at) {
        Set<String> ids = new HashSet<>();
        for (int k = 0; k < c.groups().size(); k++) {
            Group g = c.groups().get(k);
            String here = at + ".groups[" + k + "]";
            identify(ids, g.id(), here + ".id");
            require(
                    g.correlation() >= 0 && g.correlation() <= 1,
                    here + ".correlation",
                    "give a correlation from 0 to 1 for group '" + g.id() + "'");
        }
        return ids;
    }

    private void finding(Finding f, String at, Map<String, Finding> findings, Set<String> groups) {
        identify(findingIds, f.id(), at + ".id");
        values(f, at);
        distribution(f.background(), f, at + ".background");
        minutes(f.minutes(), at + ".minutes");
        require(
                f.group() == null || groups.contains(f.group()),
                at + ".group",
                "name a group of this category: '" + f.group() + "' is not listed");
        for (int k = 0; k < f.applies().size(); k++) {
            condition(f.applies().get(k), at + ".applies[" + k + "]", findings);
        }
        if (f.limits() != null) {
            limits(f, f.limits(), at + ".limits");
        }
    }

    private void values(Finding f, String at) {
        require(f.values().size() >= 2, at + ".values", "name at least two values for '" + f.id() + "'");
        require(
                new HashSet<>(f.values()).size() == f.values().size(),
                at + ".values",
                "name each value of '" + f.id() + "' once");
        require(
                f.values().stream().noneMatch(v -> v.isBlank() || Report.SILENT.contains(v)),
                at + ".values",
                "leave out blank, unknown and not applicable: they are always possible");
        require(
                f.kind() == Finding.Kind.ANSWER || isReading(f.values()),
                at + ".values",
                "a reading is inside first, then below, above or outside");
    }

    private static boolean isReading(List<String> values) {
        return READING_VALUES.containsAll(values)
                && !values.isEmpty()
                && values.get(0).equals(Finding.INSIDE);
    }

    private void distribution(Map<String, Double> p, Finding f, String at) {
        require(
                p.keySet().equals(Set.copyOf(f.values())),
                at,
                "give a probability for each value of '" + f.id() + "': " + String.join(", ", f.values()));
        require(
                p.values().stream().allMatch(x -> x > 0 && x < 1),
                at,
                "give probabilities above 0 and below 1 for '" + f.id() + "'");
        double sum = new TreeMap<>(p).values().stream().mapToDouble(x -> x).sum();
        require(
                Math.abs(sum - 1) <= SUM_TOLERANCE,
                at,
                "let the probabilities for '" + f.id() + "' sum to 1, not " + sum);
    }

    private void condition(Condition c, String at, Map<String, Finding> findings) {
        Finding other = findings.get(c.finding());
        require(other != null, at, "name a finding of this category: '" + c.finding() + "' is not listed");
        require(!c.values().isEmpty(), at, "name at least one value of '" + c.finding() + "'");
        require(
                other == null || other.values().containsAll(c.values()),
                at,
                "name values that '" + c.finding() + "' has: "
                        + (other == null ? "" : String.join(", ", other.values())));
    }

    private void limits(Finding f, Limits l, String at) {
        require(finite(l.low()) && finite(l.high()), at + ".low", "give finite limits for '" + f.id() + "'");
        require(
                l.low() != null || l.high() != null || l.nominal() != null,
                at + ".low",
                "give a low or a high limit for '" + f.id() + "'");
        require(ascending(l.low(), l.high()), at + ".low", "let low be less than high for '" + f.id() + "'");
        require(l.guard() >= 0 && Double.isFinite(l.guard()), at + ".guard", "give a guard of zero or more");
        require(
                ascending(l.physicalMin(), l.physicalMax()),
                at + ".physicalMin",
                "let physicalMin be less than physicalMax for '" + f.id() + "'");
        require(
                !f.values().contains(Finding.BELOW) || l.low() != null || l.nominal() != null,
                at + ".low",
                "give the low limit that 'below' of '" + f.id() + "' is judged by");
        require(
                !f.values().contains(Finding.ABOVE) || l.high() != null || l.nominal() != null,
                at + ".high",
                "give the high limit that 'above' of '" + f.id() + "' is judged by");
    }

    private static boolean finite(@Nullable Double x) {
        return x == null || Double.isFinite(x);
    }

    private static boolean ascending(@Nullable Double a, @Nullable Double b) {
        return a == null || b == null || a < b;
    }

    /** A question that waits for itself, directly or through others, could never be asked. */
    private void cycles(CauseCategory c, String at, Map<String, Finding> findings) {
        for (int k = 0; k < c.findings().size(); k++) {
            Finding f = c.findings().get(k);
            require(
                    !waitsFor(f, f.id(), findings, new HashSet<>()),
                    at + ".findings[" + k + "].applies",
                    "break the circle: '" + f.id() + "' waits for its own answer");
        }
    }

    private static boolean waitsFor(Finding f, String target, Map<String, Finding> findings, Set<String> seen) {
        for (Condition c : f.applies()) {
            Finding next = findings.get(c.finding());
            if (c.finding().equals(target)
                    || (next != null && seen.add(c.finding()) && waitsFor(next, target, findings, seen))) {
                return true;
            }
        }
        return false;
    }

    private void cause(Cause c, String at, Map<String, Finding> findings) {
        identify(actIds, c.id(), at + ".id");
        c.was().forEach(before -> identify(actIds, before, at + ".was"));
        require(
                c.weight() > 0 && Double.isFinite(c.weight()),
                at + ".weight",
                "give '" + c.id() + "' a finite weight above 0");
        minutes(c.confirmMinutes(), at + ".confirmMinutes");
        repair(c.repair(), at + ".repair");
        fix(c.repair().fixProbability(), at + ".repair.fixProbability");
        Set<String> named = new HashSet<>();
        for (Deviation d : c.deviations()) {
            deviation(d, at + ".deviations." + d.finding(), findings, named);
        }
    }

    private void deviation(Deviation d, String at, Map<String, Finding> findings, Set<String> named) {
        require(named.add(d.finding()), at, "name the finding '" + d.finding() + "' once");
        Finding f = findings.get(d.finding());
        if (f == null) {
            require(false, at, "name a finding of this category: '" + d.finding() + "' is not listed");
        } else {
            distribution(d.probabilities(), f, at);
        }
    }

    private void repair(Repair r, String at) {
        minutes(r.minutes(), at + ".minutes");
        minutes(r.verifyMinutes(), at + ".verifyMinutes");
        require(
                r.partCost() >= 0 && Double.isFinite(r.partCost()),
                at + ".partCost",
                "give a part cost of zero or more");
    }

    private void shared(CauseCategory c, String at) {
        Set<String> causes = new HashSet<>();
        c.causes().forEach(x -> causes.add(x.id()));
        for (int k = 0; k < c.sharedRepairs().size(); k++) {
            SharedRepair s = c.sharedRepairs().get(k);
            String here = at + ".sharedRepairs[" + k + "]";
            identify(actIds, s.id(), here + ".id");
            repair(s.repair(), here);
            require(!s.fixes().isEmpty(), here + ".fixes", "name the causes that '" + s.id() + "' removes");
            new TreeMap<>(s.fixes()).forEach((cause, q) -> {
                require(
                        causes.contains(cause),
                        here + ".fixes",
                        "name a cause of this category: '" + cause + "' is not");
                fix(q, here + ".fixes");
            });
        }
    }

    private void identify(Set<String> seen, String id, String at) {
        require(!id.isBlank(), at, "give an id");
        require(!RESERVED.contains(id), at, "choose another id: '" + id + "' is reserved");
        require(seen.add(id), at, "choose another id: '" + id + "' is used twice");
    }

    private void minutes(double x, String at) {
        require(
                x >= LEAST_MINUTES && x <= MOST_MINUTES,
                at,
                "give minutes from " + LEAST_MINUTES + " to " + (int) MOST_MINUTES);
    }

    private void fix(double q, String at) {
        require(q > 0 && q <= MOST_FIX, at, "give a probability above 0 and at most " + MOST_FIX);
    }
}
