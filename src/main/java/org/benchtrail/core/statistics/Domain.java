package org.benchtrail.core.statistics;

import org.benchtrail.core.Invalid;

/** The domains that several computations share. */
final class Domain {
    private Domain() {}

    static double confidence(double confidence) {
        if (!(confidence > 0 && confidence < 1)) {
            throw new Invalid("confidence", "Give the confidence between 0 and 1, such as 0.95.");
        }
        return confidence;
    }

    static double probability(String field, double p) {
        if (!(p >= 0 && p <= 1)) {
            throw new Invalid(field, "Give a probability between 0 and 1.");
        }
        return p;
    }
}
