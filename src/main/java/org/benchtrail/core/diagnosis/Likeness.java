package org.benchtrail.core.diagnosis;

import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/**
 * How alike two cases are by what was found on them: the weight of the findings they share against the weight of all that
 * either has. A rare finding weighs more than one that most cases have.
 *
 * <p>Weight of a finding: ln((1 + n) / (1 + k)) + 1, where k of the n cases have it: the inverse document frequency of Spärck
 * Jones (1972) as general-purpose libraries smooth it, so that it stays above 0 at a site with few cases. The quotient is the
 * weighted form of Jaccard's coefficient.
 */
public final class Likeness {
    private final int cases;
    private final Map<String, Integer> having;

    private Likeness(int cases, Map<String, Integer> having) {
        this.cases = cases;
        this.having = having;
    }

    /**
     * Learns how rare each finding is.
     *
     * @param cases the findings of each case, each written as one text such as {@code fan=stands}
     */
    public static Likeness among(Collection<? extends Collection<String>> cases) {
        Map<String, Integer> having = new HashMap<>();
        cases.forEach(findings -> Set.copyOf(findings).forEach(f -> having.merge(f, 1, Integer::sum)));
        return new Likeness(cases.size(), having);
    }

    /** Weight of a finding, at least 1; greatest for one that no case has. */
    public double weight(String finding) {
        return StrictMath.log((1.0 + cases) / (1.0 + having.getOrDefault(finding, 0))) + 1;
    }

    /** Likeness of two sets of findings, 0 (nothing shared, or nothing known) to 1 (the same); symmetric. */
    public double of(Collection<String> some, Collection<String> others) {
        Set<String> either = new HashSet<>(some);
        either.addAll(others);
        Set<String> both = new HashSet<>(some);
        both.retainAll(Set.copyOf(others));
        return either.isEmpty() ? 0 : sum(both) / sum(either);
    }

    private double sum(Set<String> findings) {
        return findings.stream().sorted().mapToDouble(this::weight).sum();
    }
}
