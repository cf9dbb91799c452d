package org.benchtrail.core.diagnosis;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A question or a reading that bears on causes.
 *
 * @param values at least two; the first is the normal one ("no", "inside"), the others are abnormal
 * @param background probability of each value when the cause does not touch the finding; sums to 1
 * @param minutes to make and record it; 0.5 to 10 000
 * @param applies all of them must hold before the question is offered
 * @param group id of the correlation group, or null
 * @param limits for a reading, or null if the judgement is made elsewhere
 * @param dangers what its making can hurt
 */
public record Finding(
        String id,
        String question,
        Kind kind,
        List<String> values,
        Map<String, Double> background,
        double minutes,
        Risk risk,
        List<Condition> applies,
        @Nullable String group,
        @Nullable Limits limits,
        Set<Danger> dangers) {

    /** A yes/no answer, or a reading judged by its limits. */
    public enum Kind {
        ANSWER,
        READING
    }

    public static final String INSIDE = "inside";
    public static final String BELOW = "below";
    public static final String ABOVE = "above";
    public static final String OUTSIDE = "outside";

    public Finding {
        values = List.copyOf(values);
        background = Map.copyOf(background);
        applies = List.copyOf(applies);
        dangers = Set.copyOf(dangers);
    }

    /** One whose making endangers nobody. */
    public Finding(
            String id,
            String question,
            Kind kind,
            List<String> values,
            Map<String, Double> background,
            double minutes,
            Risk risk,
            List<Condition> applies,
            @Nullable String group,
            @Nullable Limits limits) {
        this(id, question, kind, values, background, minutes, risk, applies, group, limits, Set.of());
    }

    Finding withBackground(Map<String, Double> learned) {
        return new Finding(id, question, kind, values, learned, minutes, risk, applies, group, limits, dangers);
    }

    public Finding withGroup(String id) {
        return new Finding(this.id, question, kind, values, background, minutes, risk, applies, id, limits, dangers);
    }

    /** A value with the reliability that is left after looking how near to a limit the reading lies. */
    public record JudgedReading(String value, double reliability) {}

    /**
     * Judges a reading. Limits are inclusive: a reading on the limit is inside, with half the trust if there is a guard.
     *
     * @param x in the unit of the limits
     * @param uncertainty expanded uncertainty, same unit; 0 if not stated, then the entry's guard is taken
     * @param reliability of the reading far from any limit
     * @throws org.benchtrail.core.Invalid if x is not finite or not physically possible
     * @throws IllegalStateException if this finding has no limits
     */
    public JudgedReading judge(double x, double uncertainty, double reliability) {
        if (limits == null) {
            throw new IllegalStateException("finding " + id + " has no limits");
        }
        limits.requirePlausible(x);
        return new JudgedReading(valueOf(limits, x), limits.trust(x, uncertainty, reliability));
    }

    private String valueOf(Limits l, double x) {
        if (l.isBelow(x)) {
            return named(BELOW);
        }
        return l.isAbove(x) ? named(ABOVE) : INSIDE;
    }

    /** Entries that only care for one side count the other as inside; "outside" stands for both sides. */
    private String named(String side) {
        if (values.contains(side)) {
            return side;
        }
        return values.contains(OUTSIDE) ? OUTSIDE : INSIDE;
    }
}
