package org.benchtrail.core.bench.judging;

import java.util.List;
import java.util.stream.Collectors;
import org.benchtrail.core.bench.Numeral;
import org.benchtrail.core.statistics.Sample;

/** Mean and variance of readings as they are worked out by hand; a long series is named, not written out. */
record ByHand(List<Double> readings, Sample sample) {
    private static final int MOST_SHOWN = 40;

    /** @param readings at least two, finite */
    static ByHand of(List<Double> readings) {
        double[] values = readings.stream().mapToDouble(x -> x).toArray();
        return new ByHand(readings, Sample.of("readings", values));
    }

    /** The mean, put in numbers. */
    String mean() {
        String sum = isLong()
                ? "sum of the readings"
                : readings.stream().map(Numeral::term).collect(Collectors.joining(" + "));
        return "(" + sum + ") / " + sample.size();
    }

    /** The sum of squares about the mean over n - 1, put in numbers. */
    String variance() {
        String mean = Numeral.term(sample.mean());
        String sum = isLong()
                ? "sum of the squares"
                : readings.stream()
                        .map(x -> "(" + Numeral.of(x) + " - " + mean + ")^2")
                        .collect(Collectors.joining(" + "));
        return "(" + sum + ") / " + (sample.size() - 1);
    }

    private boolean isLong() {
        return readings.size() > MOST_SHOWN;
    }
}
