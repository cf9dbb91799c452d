package org.benchtrail.core.measure;

import java.math.BigDecimal;
import java.util.OptionalDouble;

/**
 * A reading held against a limit: the verdict, how probable it is that the true value conforms, and by which limit and policy.
 *
 * <p>Rule, with guard band w = multiple · u: <em>within</em> if the value lies inside both limits by at least w;
 * <em>outside</em> if it lies beyond one of them by more than w; <em>too close to call</em> in between, and inside the limits
 * always when 2w is as wide as they are. With w = 0, or if the accuracy is unknown, it is the plain comparison. Comparisons
 * are made on unrounded values in the base unit, so that the unit typed does not matter.
 *
 * <p>Source: JCGM 106:2012, clauses 7 and 8; ILAC-G8:09/2019, 4.2, whose four zones are the verdict together with {@link
 * #isValueInside()}. A verdict says nothing about whether the thing may be used.
 *
 * @param standardUncertainty as a difference in the limit's unit; NaN if the accuracy is unknown
 */
public record Judgement(Verdict verdict, Reading reading, Limit limit, GuardBand policy, double standardUncertainty) {
    /** In percent: what a probability is told to, and how near it may come to none or to certainty. */
    private static final double TOLD = 0.1;

    /**
     * Judges a reading.
     *
     * @throws org.benchtrail.core.Invalid if reading and limit measure different kinds of quantity
     */
    public static Judgement of(Reading reading, Limit limit, GuardBand policy) {
        limit.requireSameKind(reading.quantity());
        double u = reading.uncertaintyInBase();
        double w = Double.isNaN(u) ? 0 : policy.multiple() * u;
        Verdict verdict = decide(reading.quantity().toBase(), limit, w);
        return new Judgement(verdict, reading, limit, policy, u / limit.unit().scale());
    }

    private static Verdict decide(double y, Limit limit, double w) {
        if (w == 0) {
            return limit.containsBase(y) ? Verdict.WITHIN : Verdict.OUTSIDE;
        }
        if (y < limit.lowerBase() - w || y > limit.upperBase() + w) {
            return Verdict.OUTSIDE;
        }
        boolean room = 2 * w < limit.upperBase() - limit.lowerBase();
        return room && y >= limit.lowerBase() + w && y <= limit.upperBase() - w
                ? Verdict.WITHIN
                : Verdict.TOO_CLOSE_TO_CALL;
    }

    /** Probability that the true value conforms, in [0, 1]; empty if the accuracy is unknown. */
    public OptionalDouble probability() {
        if (Double.isNaN(standardUncertainty)) {
            return OptionalDouble.empty();
        }
        if (standardUncertainty == 0) {
            return OptionalDouble.of(isValueInside() ? 1 : 0);
        }
        return OptionalDouble.of(Conformance.probability(
                reading.quantity().toBase(), limit.lowerBase(), limit.upperBase(), reading.uncertaintyInBase()));
    }

    /** Width of the guard band w in the limit's unit; 0 if the accuracy is unknown. */
    public double guardBand() {
        return Double.isNaN(standardUncertainty) ? 0 : policy.multiple() * standardUncertainty;
    }

    /** Whether the value as read lies inside the limit, uncertainty left aside. */
    public boolean isValueInside() {
        return limit.contains(reading.quantity());
    }

    /** Whether twice the guard band is as wide as the limits, so that no value could be called within. */
    public boolean isUncertaintyTooLarge() {
        double width = (limit.upperBase() - limit.lowerBase()) / limit.unit().scale();
        return guardBand() > 0 && 2 * guardBand() >= width;
    }

    /** The verdict in plain words, with numbers and units. */
    public String sentence() {
        String value = reading.quantity().toString();
        String bounds = "the limit of " + limit;
        return switch (verdict) {
            case WITHIN -> value + " is within " + bounds + "." + support();
            case OUTSIDE -> value + " is outside " + bounds + "." + support();
            case TOO_CLOSE_TO_CALL -> value + " is too close to call against " + bounds + ". " + doubt();
        };
    }

    private String support() {
        if (Double.isNaN(standardUncertainty)) {
            return " The instrument's accuracy is not known, so this is the plain comparison, without a probability.";
        }
        if (standardUncertainty == 0) {
            return "";
        }
        String band = guardBand() == 0 ? "" : ", further than the guard band of " + amount(guardBand());
        return " It lies " + amount(distance()) + side() + band + "; " + chance();
    }

    private String doubt() {
        if (isUncertaintyTooLarge()) {
            return "The uncertainty is too large to decide: a guard band of " + amount(guardBand())
                    + " at each end leaves nothing between the limits; " + chance()
                    + " Use a more accurate instrument.";
        }
        return "It lies " + amount(distance()) + side() + ", no further than the guard band of " + amount(guardBand())
                + "; " + chance() + " Measure again with a more accurate instrument, or several times.";
    }

    private String chance() {
        return "with a standard uncertainty of " + amount(standardUncertainty)
                + " the probability that the true value is within is "
                + Share.chance(probability().orElseThrow(), TOLD) + " %.";
    }

    private String side() {
        return isValueInside() ? " inside" : " outside";
    }

    /** Distance to the nearer limit, in the limit's unit. */
    private double distance() {
        BigDecimal y = reading.quantity().unit().convert(reading.quantity().value(), limit.unit());
        double toLower =
                limit.lower().map(b -> y.subtract(b).abs().doubleValue()).orElse(Double.POSITIVE_INFINITY);
        double toUpper =
                limit.upper().map(b -> y.subtract(b).abs().doubleValue()).orElse(Double.POSITIVE_INFINITY);
        return Math.min(toLower, toUpper);
    }

    private String amount(double difference) {
        return Digits.significant(difference, 2) + " " + limit.unit();
    }
}
