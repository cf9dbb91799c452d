package org.benchtrail.core.measure;

import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.cooling.WarmUp;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** A first-order course with scatter fitted to 10 000 points, alone and as the bench's calculation with its chart. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class WarmUpBenchmark {
    private static final int POINTS = 10_000;

    private final double[] times = new double[POINTS];
    private final double[] values = new double[POINTS];
    private final Calculation<WarmUp.Input> calculation = WarmUp.CALCULATION;
    private WarmUp.Input input = calculation.example();

    @Setup
    public void measure() {
        Random random = new Random(20261125);
        for (int i = 0; i < POINTS; i++) {
            times[i] = i;
            values[i] = 85 - 60 * Math.exp(-i / 1500.0) + 0.3 * random.nextGaussian();
        }
        input = new WarmUp.Input(
                IntStream.range(0, POINTS)
                        .mapToObj(i -> new WarmUp.Sample(times[i], values[i]))
                        .toList(),
                null,
                90.0);
    }

    @Benchmark
    public WarmUpFit fit() {
        return WarmUpFit.of(Series.of(times, values));
    }

    @Benchmark
    public Result calculation() {
        return calculation.calculate(input);
    }
}
