package org.benchtrail.core;

import org.benchtrail.core.bench.Bench;
import org.benchtrail.core.bench.Calculation;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.CommandLineOptionException;
import org.openjdk.jmh.runner.options.CommandLineOptions;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;

/**
 * Runs every benchmark briefly: {@code mvn -P benchmark test}. What is given as {@code -Dbenchmark.options} goes to JMH, such as a
 * pattern of names.
 */
public final class Benchmarks {
    private Benchmarks() {}

    public static void main(String[] options) throws RunnerException, CommandLineOptionException {
        String[] ids = Bench.all().stream().map(Calculation::id).toArray(String[]::new);
        new Runner(new OptionsBuilder()
                        .parent(new CommandLineOptions(options))
                        .forks(1)
                        .warmupIterations(2)
                        .warmupTime(TimeValue.milliseconds(300))
                        .measurementIterations(3)
                        .measurementTime(TimeValue.milliseconds(400))
                        .param("id", ids)
                        .build())
                .run();
    }
}
