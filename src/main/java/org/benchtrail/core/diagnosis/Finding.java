package org.benchtrail.core.diagnosis;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.Invalid;
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
 * @param making how it is made; null in an entry of format 1, which says no more than its question
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
        Set<Danger> dangers,
        @Nullable Making making) {

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
        dangers = Danger.inOrder(dangers);
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
        this(id, question, kind, values, background, minutes, risk, applies, group, limits, Set.of(), null);
    }

    Finding withBackground(Map<String, Double> learned) {
        return new Finding(id, question, kind, values, learned, minutes, risk, applies, group, limits, dangers, making);
    }

    /** Held against other limits: the device's own, or those of the case that is known. */
    public Finding withLimits(Limits other) {
        return new Finding(
                id, question, kind, values, background, minutes, risk, applies, group, other, dangers, making);
    }

    /** The value of most devices: that nothing is out of the ordinary. */
    public String usual() {
        return values.get(0);
    }

    /** How it is named in lists and reasons. */
    public String label() {
        return making == null ? question : making.label();
    }

    /** What to do; the label if nothing more is said. */
    public String act() {
        return making == null || making.act().isEmpty() ? label() : making.act();
    }

    public Making.Way way() {
        if (making != null) {
            return making.way();
        }
        return kind == Kind.READING ? Making.Way.MEASURE : Making.Way.LOOK;
    }

    /** Whether it opens, stops or changes something. */
    public boolean invasive() {
        return making == null ? risk.compareTo(Risk.LOW) > 0 : making.invasive();
    }

    /** What must be so before it is made. */
    public List<String> needs() {
        return making == null ? List.of() : making.needs();
    }

    /** What keeps the question back while it is known. */
    public List<Condition> unless() {
        return making == null ? List.of() : making.unless();
    }

    public boolean fleeting() {
        return making != null && making.fleeting();
    }

    public Finding withGroup(String id) {
        return new Finding(
                this.id, question, kind, values, background, minutes, risk, applies, id, limits, dangers, making);
    }

    /** A value with the reliability that is left after looking how near to a limit the reading lies. */
    public record JudgedReading(String value, double reliability) {}

    /**
     * Judges a reading. Limits are inclusive: a reading on the limit is inside, with half the trust if there is a guard.
     *
     * @param x in the unit of the limits
     * @param uncertainty expanded uncertainty, same unit; 0 if not stated, then the entry's guard is taken
     * @param reliability of the reading far from any limit
     * @throws Invalid if x is not finite or not physically possible, if the limit depends on what is not
     *     known, or if x lies on a side that the finding has no name for: then it says nothing
     * @throws IllegalStateException if this finding has no limits
     */
    public JudgedReading judge(double x, double uncertainty, double reliability) {
        if (limits == null) {
            throw new IllegalStateException("finding " + id + " has no limits");
        }
        limits.requirePlausible(x);
        limits.requireKnown();
        return new JudgedReading(valueOf(limits, x), limits.trust(x, uncertainty, reliability));
    }

    private String valueOf(Limits l, double x) {
        if (l.isBelow(x)) {
            return named(BELOW);
        }
        return l.isAbove(x) ? named(ABOVE) : INSIDE;
    }

    /** In format 1 a side without a name counts as inside, and "outside" stands for both. */
    private String named(String side) {
        if (values.contains(side)) {
            return side;
        }
        if (making == null) {
            return values.contains(OUTSIDE) ? OUTSIDE : INSIDE;
        }
        throw new Invalid("value", "a value " + side + " its limit says nothing about: " + label());
    }
}
