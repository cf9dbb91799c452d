package org.benchtrail.core.measure;

import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** A million readings of a 12 V rail, each with its meter's accuracy, held against the rail's limits. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class JudgingBenchmark {
    private static final int READINGS = 1_000_000;
    private static final int DISTINCT = 10_000;

    private final Reading[] readings = new Reading[DISTINCT];
    private final Limit limit = Limit.between("11.40", "12.60", Units.VOLT, "design guide");
    private final GuardBand guard = new GuardBand(2);

    @Setup
    public void measure() {
        Random random = new Random(20261125);
        for (int i = 0; i < DISTINCT; i++) {
            String volts = String.format(java.util.Locale.ROOT, "%.2f", 12 + 0.4 * random.nextGaussian());
            Quantity quantity = Quantity.of(volts, Units.VOLT);
            readings[i] = new Reading(quantity, Accuracy.parse("accuracy", "0.5 % + 2", quantity));
        }
    }

    @Benchmark
    public int millionVerdicts() {
        int within = 0;
        for (int i = 0; i < READINGS; i++) {
            if (limit.judge(readings[i % DISTINCT], guard).verdict() == Verdict.WITHIN) {
                within++;
            }
        }
        return within;
    }
}
