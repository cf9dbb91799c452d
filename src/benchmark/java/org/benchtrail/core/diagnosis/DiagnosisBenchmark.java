package org.benchtrail.core.diagnosis;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** Ranking and next best test for 300 causes and 500 findings, 12 of them known; each is to stay under 1 ms. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class DiagnosisBenchmark {
    private static final int CAUSES = 300;
    private static final int FINDINGS = 500;
    private static final int KNOWN = 12;
    private static final int CASES = 64;

    private final CauseCategory category = Invented.random(1, CAUSES, FINDINGS, false);
    private final Model model = new Model(category, ModelSettings.STANDARD);
    private final NextTest next = new NextTest(model, PlanSettings.STANDARD);
    private final Evidence[] evidence = new Evidence[CASES];
    private final Ranking[] rankings = new Ranking[CASES];
    private int turn;

    @Setup
    public void observe() {
        for (int k = 0; k < CASES; k++) {
            evidence[k] = Invented.evidence(k, category, KNOWN);
            rankings[k] = Ranking.of(model, evidence[k]);
        }
    }

    @Benchmark
    public Ranking ranking() {
        return Ranking.of(model, evidence[turn++ % CASES]);
    }

    @Benchmark
    public Object nextTest() {
        return next.advise(rankings[turn++ % CASES], BenchSituation.PLAIN);
    }
}
