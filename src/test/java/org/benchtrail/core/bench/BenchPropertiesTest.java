package org.benchtrail.core.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.benchtrail.BesideOthers;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What holds of every calculation for any input at all. {@code -Dbench.inputs=200000} asks for a long walk, in which every edge
 * and every pair of far ends is walked; each build takes a short one. {@code -Dbench.only=fan} walks one calculation. All
 * cores walk at once, each calculation from a seed of its own.
 */
@BesideOthers
class BenchPropertiesTest {
    private static final int INPUTS = Integer.getInteger("bench.inputs", 20_000);
    private static final int LONG = 200_000;
    private static final String ONLY = System.getProperty("bench.only", "");

    private static final ExecutorService CORES =
            Executors.newFixedThreadPool(Runtime.getRuntime().availableProcessors());
    private static final Map<Object, Future<List<String>>> WALKS = new LinkedHashMap<>();

    @BeforeAll
    static void setOut() {
        calculations()
                .forEach(c -> setOut(
                        c, () -> new Walk(c).anyInput(INPUTS / Bench.all().size(), INPUTS >= LONG)));
        drives().forEach(drive -> setOut(
                drive,
                () -> new Walk(Bench.find(drive.calculation()).orElseThrow())
                        .oneWay(drive, Math.max(3, INPUTS / 4_000))));
    }

    private static void setOut(Object what, Callable<List<String>> walk) {
        WALKS.put(what, CORES.submit(walk));
    }

    @AfterAll
    static void stop() {
        CORES.shutdownNow();
    }

    static List<Calculation<?>> calculations() {
        return Bench.all().stream().filter(c -> isAsked(c.id())).toList();
    }

    static List<Drive> drives() {
        return Drive.ALL.stream().filter(d -> isAsked(d.calculation())).toList();
    }

    private static boolean isAsked(String calculation) {
        return ONLY.isEmpty() || ONLY.equals(calculation);
    }

    @ParameterizedTest
    @MethodSource("calculations")
    void anyInput_isRefusedOrJudgedInWordsThatFitTheNumbers(Calculation<?> c) throws Exception {
        assertEquals(List.of(), WALKS.get(c).get());
    }

    @ParameterizedTest(allowZeroInvocations = true)
    @MethodSource("drives")
    void verdict_goesOneWayAsItsInputGrows(Drive drive) throws Exception {
        assertEquals(List.of(), WALKS.get(drive).get());
    }
}
