package org.benchtrail.core.bench.network;

import static org.benchtrail.core.Published.check;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.FigureOf;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.network.PathThroughput.Acknowledgement;
import org.benchtrail.core.bench.network.PathThroughput.Input;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PathThroughputTest {
    private static final String RFC = "RFC 6349 section 3.3.1";
    private static final String MATHIS = "Mathis et al. 1997, recomputed";

    private static Result of(double bandwidth, double rtt, double window, double loss, Acknowledgement ack) {
        return PathThroughput.calculate(new Input(bandwidth, rtt, window, loss, 1460, ack, null, null, null));
    }

    @ParameterizedTest
    @CsvSource({
        "1.536, 20, 30720, 3.84",
        "1.536, 50, 76800, 9.60",
        "1.536, 100, 153600, 19.20",
        "44.210, 10, 442100, 55.26",
        "44.210, 15, 663150, 82.89",
        "44.210, 25, 1105250, 138.16",
        "36.864, 10, 368640, 46.08",
        "36.864, 15, 552960, 69.12",
        "36.864, 25, 921600, 115.20",
        "100, 1, 100000, 12.50",
        "100, 2, 200000, 25.00",
        "100, 5, 500000, 62.50",
        "1000, 0.1, 100000, 12.50",
        "1000, 0.5, 500000, 62.50",
        "1000, 1, 1000000, 125.00",
        "10000, 0.05, 500000, 62.50",
        "10000, 0.3, 3000000, 375.00"
    })
    void product_reproducesTheTable(double bandwidth, double rtt, double bits, double kilobytes) {
        Result result = of(bandwidth, rtt, 65_535, 0, Acknowledgement.EACH);
        check(RFC, bits, FigureOf.value(result, "Bandwidth-delay product"), 1e-6);
        check(RFC, kilobytes, FigureOf.value(result, "Window that fills the path") / 1000, 0.00501);
    }

    @ParameterizedTest
    @CsvSource({"20, 26.214", "100, 5.2428"})
    void windowOf65535Bytes(double rtt, double limit) {
        check(RFC, limit, FigureOf.value(of(1000, rtt, 65_535, 0, Acknowledgement.EACH), "Window limit"), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({
        "100, 0.01, EACH, 14.305020",
        "100, 0.01, DELAYED, 10.115177",
        "50, 0.1, EACH, 9.047289",
        "100, 1, EACH, 1.430502"
    })
    void lossLimit(double rtt, double percent, Acknowledgement ack, double limit) {
        check(MATHIS, limit, FigureOf.value(of(1000, rtt, 1e9, percent, ack), "Loss limit"), 1e-6);
    }

    @Test
    void lossLimit_withTheConstantOne() {
        check(MATHIS, 11.68, PathThroughput.lossLimit(1460, 100, 1e-4, 1), 1e-9);
        check(MATHIS, 1.224745, Acknowledgement.EACH.constant(), 5e-7);
        check(MATHIS, 0.866025, Acknowledgement.DELAYED.constant(), 5e-7);
    }

    @Test
    void efficiencyAndBufferDelay() {
        Result result = PathThroughput.calculate(
                new Input(100, 25, 65_535, 0, 1460, Acknowledgement.EACH, 32.0, 102_000.0, 2_000.0));
        check("RFC 6349 metrics", 98.0392, FigureOf.value(result, "TCP efficiency"), 5e-5);
        check("RFC 6349 metrics", 28, FigureOf.value(result, "Buffer delay"), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({
        "1000, 100, 65535, 0, the window binds",
        "1, 100, 65535, 0, the link binds",
        "1000, 100, 1e9, 0.1, loss binds",
        "100, 20, 1e9, 3, loss is too high to predict"
    })
    void theLeastBinds(double bandwidth, double rtt, double window, double loss, String words) {
        assertEquals(
                words,
                of(bandwidth, rtt, window, loss, Acknowledgement.DELAYED)
                        .judgement()
                        .words());
    }

    @Test
    void withoutLoss_orTooMuch_noLossLimitIsGiven() {
        assertFalse(FigureOf.has(of(100, 20, 65_535, 0, Acknowledgement.EACH), "Loss limit"));
        assertFalse(FigureOf.has(of(100, 20, 65_535, 2, Acknowledgement.EACH), "Loss limit"));
        assertTrue(FigureOf.has(of(100, 20, 65_535, 1.99, Acknowledgement.EACH), "Loss limit"));
    }

    @Test
    void contradictions_areRefused() {
        Invalid refusal = assertThrows(
                Invalid.class, () -> new Input(100, 25, 65_535, 0, 1460, Acknowledgement.EACH, 24.0, 100.0, 101.0));
        assertEquals(2, refusal.problems().size());
        assertThrows(Invalid.class, () -> new Input(100, 25, 65_535, 0, 1460, Acknowledgement.EACH, null, 100.0, null));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void moreLossOrDelay_neverCarriesMore(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 500; i++) {
            double rtt = Math.pow(10, 3 * random.nextDouble());
            double window = Math.pow(10, 3 + 5 * random.nextDouble());
            double loss = Math.pow(10, -5 + 5 * random.nextDouble());
            String name = "Throughput, at most";
            double here = FigureOf.value(of(1000, rtt, window, loss, Acknowledgement.EACH), name);
            assertTrue(
                    FigureOf.value(of(1000, rtt * 1.1, window, loss, Acknowledgement.EACH), name) <= here,
                    "seed " + seed);
            assertTrue(
                    FigureOf.value(of(1000, rtt, window, loss * 1.1, Acknowledgement.EACH), name) <= here,
                    "seed " + seed);
            assertTrue(
                    FigureOf.value(of(1000, rtt, window * 1.1, loss, Acknowledgement.EACH), name) >= here,
                    "seed " + seed);
        }
    }
}
