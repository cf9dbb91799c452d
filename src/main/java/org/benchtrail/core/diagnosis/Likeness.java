package org.benchtrail.core.diagnosis;

import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * How alike two cases are by what was found on them: the weight of the findings they share against the weight of all that
 * either has. A rare finding weighs more than one that most cases have.
 *
 * <p>Weight of a finding: ln((1 + n) / (1 + k)) + 1, where k of the n cases have it: the inverse document frequency of Spärck
 * Jones (1972) as general-purpose libraries smooth it, so that it stays above 0 at a site with few cases. The quotient is the
 * weighted form of Jaccard's coefficient.
 *
 * <p>To be in the same part of a path, or in the same place, takes away a share of what two cases differ by; not to know it, or
 * to differ in it, takes nothing. So the same part alone is a little like, the same place alone hardly.
 */
public final class Likeness {
    /** Share of the difference that the same part of a path takes away; common practice, no source. */
    private static final double SAME_SEGMENT = 0.25;

    /** Share of the difference that the same place takes away; common practice, no source. */
    private static final double SAME_PLACE = 0.1;

    /**
     * What a case is compared by.
     *
     * @param findings each written as one text such as {@code fan=stands}
     * @param segments parts of the path that it was put in; empty if nobody knows
     * @param place empty if nobody knows
     */
    public record Traits(Set<String> findings, Set<String> segments, String place) {
        public Traits {
            findings = Set.copyOf(findings);
            segments = Set.copyOf(segments);
        }

        public boolean isSamePlace(Traits other) {
            return !place.isBlank() && place.equals(other.place);
        }

        /** Segments that both were put in. */
        public Set<String> shared(Traits other) {
            Set<String> both = new TreeSet<>(segments);
            both.retainAll(other.segments);
            return both;
        }
    }

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

    /** Likeness by all that is known of two cases; symmetric, and never less than that of their findings. */
    public double of(Traits some, Traits others) {
        double apart = 1 - of(some.findings(), others.findings());
        apart *= some.shared(others).isEmpty() ? 1 : 1 - SAME_SEGMENT;
        apart *= some.isSamePlace(others) ? 1 - SAME_PLACE : 1;
        return 1 - apart;
    }

    private double sum(Set<String> findings) {
        return findings.stream().sorted().mapToDouble(this::weight).sum();
    }
}
