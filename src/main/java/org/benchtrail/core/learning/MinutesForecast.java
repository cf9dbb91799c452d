package org.benchtrail.core.learning;

import org.benchtrail.core.Invalid;

/** An interval that was to hold the minutes with 80 %. */
public record MinutesForecast(double lower, double upper) {
    private static final double MISSES = 0.2;

    public MinutesForecast {
        new Invalid.Collector()
                .require(0 <= lower && lower <= upper, "upper", "Give two numbers of minutes, the smaller one first.")
                .throwIfAny();
    }

    /**
     * Minutes, less is better: the width, and ten times what it missed by. Honest bounds are best (T. Gneiting and A. E.
     * Raftery, "Strictly proper scoring rules, prediction, and estimation", J. Am. Stat. Assoc. 102, 2007).
     */
    public double score(double minutes) {
        return upper - lower + 2 / MISSES * Math.max(0, Math.max(lower - minutes, minutes - upper));
    }
}
