package org.benchtrail.core.bench.judging;

import java.util.List;
import java.util.stream.Collectors;
import org.benchtrail.core.bench.Numeral;

/**
 * Combination of standard uncertainties that do not depend on one another.
 *
 * <p>Shape: contributions in the unit of the result, degrees of freedom in the same order; infinity for a contribution that is
 * known outright. Source: JCGM 100 (GUM), 5.1.2 and annex G.4.
 */
final class Uncertainties {
    private static final int MOST_SHOWN = 40;

    private Uncertainties() {}

    /** Standard uncertainty of something known to lie within {@code halfWidth} and no better (GUM 4.3.7). */
    static double rectangular(double halfWidth) {
        return halfWidth / Math.sqrt(3);
    }

    static double combined(double... contributions) {
        double sum = 0;
        for (double u : contributions) {
            sum += u * u;
        }
        return Math.sqrt(sum);
    }

    /** Effective degrees of freedom by Welch and Satterthwaite; infinite if all contributions are known outright. */
    static double effectiveDegrees(double[] contributions, double[] degrees) {
        double whole = combined(contributions);
        double sum = 0;
        for (int i = 0; i < contributions.length; i++) {
            sum += Math.pow(contributions[i] / whole, 4) / degrees[i];
        }
        return 1 / sum;
    }

    /** The mean as it is worked out by hand; a long series is named, not written out. */
    static String meanPut(List<Double> values) {
        int n = values.size();
        String sum = n > MOST_SHOWN
                ? "sum of the readings"
                : values.stream().map(Numeral::term).collect(Collectors.joining(" + "));
        return "(" + sum + ") / " + n;
    }

    /** The sum of squares about the mean as it is worked out by hand, over n - 1. */
    static String variancePut(List<Double> values) {
        int n = values.size();
        String mean = Numeral.term(mean(values));
        String sum = n > MOST_SHOWN
                ? "sum of the squares"
                : values.stream()
                        .map(x -> "(" + Numeral.of(x) + " - " + mean + ")^2")
                        .collect(Collectors.joining(" + "));
        return "(" + sum + ") / " + (n - 1);
    }

    static double mean(Iterable<Double> values) {
        double sum = 0;
        int n = 0;
        for (double value : values) {
            sum += value;
            n++;
        }
        return sum / n;
    }

    /** Variance of a sample, n - 1 in the denominator; at least two values. */
    static double variance(Iterable<Double> values) {
        double mean = mean(values);
        double sum = 0;
        int n = 0;
        for (double value : values) {
            sum += (value - mean) * (value - mean);
            n++;
        }
        return sum / (n - 1);
    }
}
