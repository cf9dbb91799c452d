package org.benchtrail.core.bench;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** Each calculation of the bench on its example. The ids come from {@link Bench} when the benchmarks are run. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class CalculationBenchmark {
    @Param("ups-load")
    public String id = "";

    private Work work = () -> {
        throw new IllegalStateException("no calculation was chosen");
    };

    private interface Work {
        Result once();
    }

    @Setup
    public void choose() {
        work = work(Bench.find(id).orElseThrow());
    }

    private static <I extends Record> Work work(Calculation<I> calculation) {
        I example = calculation.example();
        return () -> calculation.calculate(example);
    }

    @Benchmark
    public Result example() {
        return work.once();
    }
}
