package org.benchtrail.core.measure;

import java.util.OptionalDouble;
import org.benchtrail.core.Invalid;
import org.jspecify.annotations.Nullable;

/** What is known of how far an instrument's reading may lie from the true value. */
public sealed interface Accuracy {

    /**
     * Standard uncertainty of a reading, in the base unit of its dimension; empty if nothing is known.
     *
     * @throws Invalid if the accuracy does not apply to this reading
     */
    OptionalDouble standardUncertainty(Quantity reading);

    /**
     * How multimeters are specified: ±(percent of reading + counts of the last digit). Half-width a = |reading| · percent/100 +
     * counts · resolution; u = a/√3, every value in between taken as equally likely (GUM 4.3.7).
     *
     * @param percent of reading, 0 or more
     * @param counts of the last digit, 0 or more
     * @param resolution what one count is worth on the range used, more than 0
     * @param range largest magnitude for which the specification holds; null if it was not given
     */
    record PercentPlusCounts(
            double percent,
            double counts,
            Quantity resolution,
            @Nullable Quantity range) implements Accuracy {
        public PercentPlusCounts {
            new Invalid.Collector()
                    .require(isAtLeastZero(percent), "percent", "Give the percent of reading as 0 or more.")
                    .require(isAtLeastZero(counts), "counts", "Give the counts (digits) as 0 or more.")
                    .require(percent + counts != 0, "percent", "Percent and counts are both 0: give at least one.")
                    .require(
                            resolution.value().signum() > 0,
                            "resolution",
                            "Give what one count is worth, more than 0, such as 0.01 V.")
                    .require(
                            range == null
                                    || range.unit().dimension()
                                            == resolution.unit().dimension(),
                            "range",
                            "Give the range in a unit of the same kind as the resolution.")
                    .throwIfAny();
        }

        public PercentPlusCounts(double percent, double counts, Quantity resolution) {
            this(percent, counts, resolution, null);
        }

        /** Half-width a of the specification at this reading, in the base unit. */
        double halfWidth(Quantity reading) {
            requireSameKind(reading, resolution);
            double size = Math.abs(magnitude(reading));
            if (range != null && size > range.differenceToBase()) {
                throw new Invalid(
                        "reading",
                        reading + " lies beyond the range of " + range
                                + " for which this accuracy holds: give the accuracy of the range used.");
            }
            return size * percent / 100 + counts * resolution.differenceToBase();
        }

        /** A percentage of reading on a Celsius scale means a share of the degrees shown, not of the kelvin behind them. */
        private static double magnitude(Quantity reading) {
            return reading.differenceToBase();
        }

        @Override
        public OptionalDouble standardUncertainty(Quantity reading) {
            return OptionalDouble.of(Uncertainty.rectangular(halfWidth(reading)));
        }
    }

    /**
     * Bounds of ± a, whatever the reading; u = a/√3 (GUM 4.3.7).
     *
     * @param halfWidth a as a difference, 0 or more; 0 only for what is exact, such as a count
     */
    record Absolute(Quantity halfWidth) implements Accuracy {
        public Absolute {
            if (halfWidth.value().signum() < 0) {
                throw new Invalid("halfWidth", "Give the accuracy as 0 or more, without a sign.");
            }
        }

        @Override
        public OptionalDouble standardUncertainty(Quantity reading) {
            requireSameKind(reading, halfWidth);
            return OptionalDouble.of(Uncertainty.rectangular(halfWidth.differenceToBase()));
        }
    }

    /**
     * An expanded uncertainty U with its coverage factor, as a calibration certificate states it; u = U/k (GUM 4.3.3). With
     * k = 1, a standard uncertainty got in another way.
     *
     * @param expanded U as a difference, more than 0
     * @param coverageFactor k, more than 0; usually 2
     */
    record Certified(Quantity expanded, double coverageFactor) implements Accuracy {
        public Certified {
            new Invalid.Collector()
                    .require(expanded.value().signum() > 0, "expanded", "Give the uncertainty U as more than 0.")
                    .require(
                            coverageFactor > 0 && coverageFactor < Double.POSITIVE_INFINITY,
                            "coverageFactor",
                            "Give the coverage factor k as more than 0, usually 2.")
                    .throwIfAny();
        }

        @Override
        public OptionalDouble standardUncertainty(Quantity reading) {
            requireSameKind(reading, expanded);
            return OptionalDouble.of(expanded.differenceToBase() / coverageFactor);
        }
    }

    /** Nothing is known: a reading is compared with its limit as it stands, and the verdict says so. */
    record Unknown() implements Accuracy {
        @Override
        public OptionalDouble standardUncertainty(Quantity reading) {
            return OptionalDouble.empty();
        }
    }

    /**
     * Reads what an instrument's data sheet or certificate says, as people type it: {@code 0.5 % + 2} (of reading, plus counts
     * of the last digit), {@code 0.5 %}, {@code 3 counts}, {@code 0.1 V} or {@code \u00b10.1} (bounds), {@code U 0.2 V k 2} (expanded
     * uncertainty of a certificate). Nothing typed means that nothing is known.
     *
     * @param reading whose last digit a count is, and whose unit is meant where none is typed
     * @throws Invalid on {@code field} if it cannot be read or does not fit the reading
     */
    static Accuracy parse(String field, String text, Quantity reading) {
        return AccuracyText.read(field, text, reading);
    }

    private static boolean isAtLeastZero(double value) {
        return value >= 0 && value < Double.POSITIVE_INFINITY;
    }

    private static void requireSameKind(Quantity reading, Quantity accuracy) {
        if (reading.unit().dimension() != accuracy.unit().dimension()) {
            throw new Invalid(
                    "accuracy",
                    "The reading is a " + reading.unit().dimension().words() + ", the accuracy a "
                            + accuracy.unit().dimension().words() + ": give both in units of the same kind.");
        }
    }
}
