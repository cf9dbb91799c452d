package org.benchtrail.core.measure;

import org.benchtrail.core.statistics.Sample;
import org.benchtrail.core.statistics.Welch;

/**
 * Readings before and after a change, compared by Welch's t.
 *
 * <p>Assumes one instrument for both, so that its own error drops out of the difference, and readings that do not follow from
 * each other. It shows whether the value changed; that the fix did it is for the technician to say.
 *
 * @param welch difference after minus before
 * @param changed whether the interval of the difference leaves zero out
 */
public record BeforeAfter(Sample before, Sample after, Unit unit, Welch welch, boolean changed) {

    /**
     * Compares readings in the same unit.
     *
     * @param confidence in (0, 1), such as 0.95
     * @throws org.benchtrail.core.Invalid if a side has fewer than two readings, or neither scatters
     */
    public static BeforeAfter of(double[] before, double[] after, Unit unit, double confidence) {
        Sample first = Sample.of("before", before);
        Sample second = Sample.of("after", after);
        Welch welch = Welch.of(first, second, confidence);
        return new BeforeAfter(first, second, unit, welch, !welch.interval().contains(0));
    }

    /** What is shown, in plain words, with the interval. */
    public String sentence() {
        String means = "The mean went from " + amount(before.mean(), 4) + " to " + amount(after.mean(), 4) + ", "
                + directed(welch.difference()) + " (" + interval() + "; Welch's t = "
                + Digits.significant(welch.t(), 3) + " with "
                + Digits.significant(welch.degreesOfFreedom(), 3) + " degrees of freedom, " + pValue() + "). ";
        return means
                + (changed
                        ? "Scatter alone hardly gives as much: the value changed."
                        : "Scatter alone may give as much: no change is shown.");
    }

    private String interval() {
        return "with " + Digits.significant(100 * welch.interval().confidence(), 3) + " % confidence between "
                + directed(welch.interval().lower()) + " and "
                + directed(welch.interval().upper());
    }

    private String directed(double difference) {
        if (difference == 0) {
            return "no difference";
        }
        return amount(Math.abs(difference), 3) + (difference > 0 ? " higher" : " lower");
    }

    private String amount(double value, int digits) {
        return Digits.significant(value, digits) + " " + unit;
    }

    private String pValue() {
        return welch.pValue() < 0.0001 ? "p < 0.0001" : "p = " + Digits.significant(welch.pValue(), 2);
    }
}
