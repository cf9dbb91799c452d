package org.benchtrail.core.statistics;

import org.benchtrail.core.Invalid;

/**
 * L = λW: tickets in the shop = arrivals per time × time each stays, over a steady stretch.
 *
 * <p>Source: Little, Operations Research 9 (1961). Units: λ and W in the same unit of time. Domain: 0 or more, finite.
 */
public final class LittlesLaw {
    private LittlesLaw() {}

    /** L, how many are in the shop at once. */
    public static double inside(double arrivalRate, double stay) {
        return atLeastZero("arrivalRate", arrivalRate) * atLeastZero("stay", stay);
    }

    /** W, how long each stays. @throws Invalid if nothing arrives: the stay is then undefined */
    public static double stay(double inside, double arrivalRate) {
        return atLeastZero("inside", inside) / aboveZero("arrivalRate", arrivalRate);
    }

    /** λ, arrivals per time. @throws Invalid if the stay is 0 */
    public static double arrivalRate(double inside, double stay) {
        return atLeastZero("inside", inside) / aboveZero("stay", stay);
    }

    private static double atLeastZero(String field, double value) {
        if (!(value >= 0) || Double.isInfinite(value)) {
            throw new Invalid(field, "Give a number of 0 or more.");
        }
        return value;
    }

    private static double aboveZero(String field, double value) {
        if (!(value > 0) || Double.isInfinite(value)) {
            throw new Invalid(field, "Give a number above 0; with 0 the answer is undefined.");
        }
        return value;
    }
}
