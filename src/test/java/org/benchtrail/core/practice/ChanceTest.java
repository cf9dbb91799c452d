package org.benchtrail.core.practice;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.Instant;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.practice.Chance.Instrument;
import org.junit.jupiter.api.Test;

class ChanceTest {
    private static final Chance SEVEN = new Chance(seed(7));
    private static final Instrument BOARD = new Instrument("board", 1.5, 0.5, 1);

    private static byte[] seed(int last) {
        byte[] seed = new byte[32];
        seed[31] = (byte) last;
        return seed;
    }

    @Test
    void normal_isWhatTheLabelAndTheSeedGive() {
        assertEquals(0.059719587, SEVEN.normal("noise|processor temperature|die sensor|board|1"), 1e-9);
        assertEquals(0.067947354, SEVEN.normal("noise|processor temperature|die sensor|board|2"), 1e-9);
        assertEquals(-2.311995804, SEVEN.normal("offset|processor temperature|board"), 1e-9);
        assertEquals(0.998203305455425, SEVEN.uniform("noise|processor temperature|die sensor|board|1"), 1e-15);
    }

    @Test
    void reading_hasTheInstrumentsFixedErrorAndItsNoise() {
        double shown = 80 + 1.5 * -2.311995804 + 0.5 * 0.059719587;
        assertEquals(Math.rint(shown), SEVEN.reading(80, "processor temperature", "die sensor", BOARD, 1));
    }

    @Test
    void orderOfActs_changesNothing() {
        double[] forth = new double[20];
        double[] back = new double[20];
        Instrument fine = new Instrument("probe", 0.8, 0.2, 1e-6);
        for (int i = 0; i < 20; i++) {
            forth[i] = SEVEN.reading(50, "temperature", "sink", fine, i + 1);
        }
        for (int i = 19; i >= 0; i--) {
            back[i] = new Chance(seed(7)).reading(50, "temperature", "sink", fine, i + 1);
        }
        assertArrayEquals(forth, back);
        assertNotEquals(forth[0], forth[1]);
        assertNotEquals(forth[0], new Chance(seed(8)).reading(50, "temperature", "sink", fine, 1));
    }

    @Test
    void manyDraws_areStandardNormal() {
        int draws = 100_000;
        double sum = 0;
        double squares = 0;
        for (int i = 0; i < draws; i++) {
            double z = SEVEN.normal("noise|q|p|i|" + i);
            sum += z;
            squares += z * z;
        }
        double mean = sum / draws;
        assertEquals(0, mean, 0.01);
        assertEquals(1, Math.sqrt(squares / draws - mean * mean), 0.01);
    }

    @Test
    void seedOfAJob_dependsOnSecretFamilyAndNumber() {
        double one = Chance.ofJob(seed(1), "desktop", 1).uniform("x");
        assertEquals(one, Chance.ofJob(seed(1), "desktop", 1).uniform("x"));
        assertNotEquals(one, Chance.ofJob(seed(2), "desktop", 1).uniform("x"));
        assertNotEquals(one, Chance.ofJob(seed(1), "drive", 1).uniform("x"));
        assertNotEquals(one, Chance.ofJob(seed(1), "desktop", 2).uniform("x"));
    }

    @Test
    void virtualTime_goesForwardByActsAlone() {
        VirtualClock clock = VirtualClock.at(Instant.parse("2026-03-02T08:00:00Z"));
        VirtualClock later = clock.worked(12.5).waited(90).worked(2);
        assertEquals(14.5, later.handsOn());
        assertEquals(90, later.waiting());
        assertEquals(Instant.parse("2026-03-02T09:44:30Z"), later.now());
        assertThrows(Invalid.class, () -> later.worked(-1));
        assertThrows(Invalid.class, () -> later.waited(Double.NaN));
    }
}
