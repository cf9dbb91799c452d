package org.benchtrail.core.bench.voice;

import static org.benchtrail.core.Published.check;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.benchtrail.core.bench.FigureOf;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.voice.Voice.Codec;
import org.benchtrail.core.bench.voice.Voice.Input;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class VoiceTest {
    private static final String ANNEX_B = "ITU-T G.107 annex B";

    private static Result of(Codec codec, double delay, double jitter, double loss, double burst) {
        return Voice.calculate(new Input(codec, delay, jitter, null, loss, burst));
    }

    @ParameterizedTest
    @CsvSource({
        "50, 2.575",
        "60, 3.100",
        "70, 3.597",
        "80, 4.024",
        "90, 4.339",
        "93.2, 4.409286",
        "100, 4.5",
        "120, 4.5",
        "0, 1",
        "-10, 1"
    })
    void score(double r, double mos) {
        check(ANNEX_B, mos, Voice.meanOpinionScore(r), r == 93.2 ? 5e-7 : 5e-4);
    }

    @ParameterizedTest
    @CsvSource({"90, 4.34", "80, 4.03", "70, 3.60", "60, 3.10", "50, 2.58"})
    void score_agreesWithThePrintedTable(double r, double mos) {
        check("ITU-T G.107 printed table, from memory", mos, Voice.meanOpinionScore(r), 0.01);
    }

    @Test
    void score_neverDipsBelowOne() {
        check(ANNEX_B, 1, Voice.meanOpinionScore(3), 0);
    }

    @Test
    void allAtDefault_givesTheDefaultRating() {
        Result result = of(Codec.G711, 0, 0, 0, 1);
        check("ITU-T G.107 default rating", 93.2, FigureOf.value(result, "Rating R"), 1e-12);
        check("ITU-T G.107 default rating", 4.409286, FigureOf.value(result, "MOS"), 5e-7);
    }

    /** Delay costs nothing up to 100 ms, starts without a step, and about 24 at 400 ms (read off the curve, from memory). */
    @Test
    void delayImpairment_hasTheKnownShape() {
        assertEquals(0, Voice.delayImpairment(100), 0);
        assertEquals(0, Voice.delayImpairment(100.001), 1e-6);
        check("ITU-T G.107 Idd at 400 ms, curve from memory", 24, Voice.delayImpairment(400), 0.5);
    }

    @Test
    void lossImpairment_halvesTheRestWhereLossEqualsRobustness() {
        assertEquals(11 + 84 / 2.0, Voice.lossImpairment(11, 19, 19, 1), 1e-12);
        assertEquals(11, Voice.lossImpairment(11, 19, 0, 1), 0);
    }

    @ParameterizedTest
    @CsvSource({"130, at most 150 ms", "131, between 150 and 400 ms", "380, between 150 and 400 ms", "381, above 400 ms"
    })
    void delay_isNamedByTheStandardsLimits(double delay, String words) {
        check(
                "ITU-T G.114 150 and 400 ms",
                true,
                of(Codec.G711, delay, 0, 0, 1).judgement().reason().contains(words));
    }

    @ParameterizedTest
    @CsvSource({
        "G711, 0, best, GOOD",
        "G711, 1, medium, CAREFUL",
        "G711_CONCEALED, 1, high, GOOD",
        "G711, 3, poor, BAD",
        "G711, 20, below poor, BAD"
    })
    void band(Codec codec, double loss, String words, Level level) {
        Result result = of(codec, 50, 10, loss, 1);
        assertEquals(words, result.judgement().words());
        assertEquals(level, result.judgement().level());
    }

    @Test
    void givenBuffer_isTakenInsteadOfTwiceTheJitter() {
        Result result = Voice.calculate(new Input(Codec.G729A, 50, 20, 60.0, 0, 1));
        assertEquals(50 + 60 + 25, FigureOf.value(result, "Delay from mouth to ear"), 1e-12);
        assertEquals(50 + 40 + 25, FigureOf.value(of(Codec.G729A, 50, 20, 0, 1), "Delay from mouth to ear"), 1e-12);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void moreDelayJitterLossOrBursts_neverSoundBetter(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 400; i++) {
            Codec codec = Codec.values()[random.nextInt(4)];
            double delay = 500 * random.nextDouble();
            double jitter = 60 * random.nextDouble();
            double loss = 10 * random.nextDouble();
            double burst = 1 + random.nextDouble();
            double r = FigureOf.value(of(codec, delay, jitter, loss, burst), "Rating R");
            assertTrue(
                    FigureOf.value(of(codec, delay + 1, jitter, loss, burst), "Rating R") <= r + 1e-12, "seed " + seed);
            assertTrue(
                    FigureOf.value(of(codec, delay, jitter + 1, loss, burst), "Rating R") <= r + 1e-12, "seed " + seed);
            assertTrue(FigureOf.value(of(codec, delay, jitter, loss + 0.1, burst), "Rating R") < r, "seed " + seed);
            assertTrue(FigureOf.value(of(codec, delay, jitter, loss, burst + 0.1), "Rating R") <= r, "seed " + seed);
            assertTrue(Voice.meanOpinionScore(r + 1) >= Voice.meanOpinionScore(r), "seed " + seed + " R " + r);
        }
    }
}
