package org.benchtrail.core.practice.desktop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.Set;
import org.benchtrail.core.practice.Chance;
import org.benchtrail.core.practice.Parameters;
import org.benchtrail.core.practice.Stated;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class DesktopSeedTest {
    private static final byte[] SECRET = {7};
    private static final int SEEDS = Integer.getInteger("practice.seeds", 12);

    @ParameterizedTest
    @EnumSource(value = DesktopFault.class, names = "NONE", mode = EnumSource.Mode.EXCLUDE)
    void everySeed_showsItsSymptomAndIsItself(DesktopFault fault) {
        Set<Double> watts = new HashSet<>();
        for (int i = 0; i < SEEDS; i++) {
            Parameters<DesktopPart> parts = DesktopSeed.draw(Chance.ofJob(SECRET, "desktop", i), fault, Stated.NOTHING)
                    .orElseThrow();
            assertTrue(DesktopSeed.isTooHot(parts));
            watts.add(new DesktopHeat(parts).watts(1, 1));
        }
        assertEquals(SEEDS, watts.size());
    }

    @Test
    void soundDesktop_neverShowsIt() {
        assertTrue(DesktopSeed.draw(Chance.ofJob(SECRET, "desktop", 1), DesktopFault.NONE, Stated.NOTHING)
                .isEmpty());
    }

    @Test
    void sameSeed_isTheSameDesktop() {
        Parameters<DesktopPart> one = DesktopSeed.draw(
                        Chance.ofJob(SECRET, "desktop", 3), DesktopFault.DUST, Stated.NOTHING)
                .orElseThrow();
        Parameters<DesktopPart> other = DesktopSeed.draw(
                        Chance.ofJob(SECRET, "desktop", 3), DesktopFault.DUST, Stated.NOTHING)
                .orElseThrow();
        for (DesktopPart part : DesktopPart.values()) {
            assertEquals(one.get(part), other.get(part), part.name());
        }
    }

    @Test
    void instruments_showTheTruthWithTheirErrors() {
        double dieSum = 0;
        double speedSum = 0;
        int seeds = 400;
        Desktop hot = new Desktop(
                Parameters.sound(),
                new DesktopHeat(Parameters.sound()).settled(1).sink(),
                true,
                0);
        for (int i = 0; i < seeds; i++) {
            Chance chance = Chance.ofJob(SECRET, "desktop", i);
            double die = DesktopReading.DIE.of(hot, 1, chance, 1);
            assertEquals(Math.rint(die), die);
            dieSum += die;
            speedSum += DesktopReading.SPEED.of(hot, 1, chance, 1);
        }
        assertEquals(76.29, dieSum / seeds, 0.3);
        assertEquals(1717, speedSum / seeds, 3);
        assertEquals(1, DesktopReading.CLOCK.of(hot, 1, new Chance(SECRET), 1));
    }

    /** Of two that are as hot, the fan's speed is the reading that parts them, by far more than its noise. */
    @Test
    void alikePair_isToldApartOnEverySeed() {
        for (int i = 0; i < SEEDS; i++) {
            Chance chance = Chance.ofJob(SECRET, "desktop", i);
            double dust = speed(
                    DesktopSeed.draw(chance, DesktopFault.DUST, Stated.NOTHING).orElseThrow(), chance);
            double slow = speed(
                    DesktopSeed.draw(chance, DesktopFault.SLOW_FAN, Stated.NOTHING)
                            .orElseThrow(),
                    chance);
            assertTrue(dust - slow > 20 * 15, dust + " and " + slow);
        }
    }

    private static double speed(Parameters<DesktopPart> parts, Chance chance) {
        Desktop settled = new Desktop(parts, new DesktopHeat(parts).settled(1).sink(), true, 0);
        return DesktopReading.SPEED.of(settled, 1, chance, 1);
    }

    /** A reading of the die before ten minutes under load is still climbing. */
    @Test
    void readingTakenTooSoon_isTooCool() {
        Parameters<DesktopPart> dusty = DesktopFault.DUST.in(Parameters.sound());
        Desktop idle = Desktop.idle(dusty);
        Chance chance = new Chance(SECRET);
        double soon = DesktopReading.DIE.of(idle.run(60, 1, true, chance).after(), 1, chance, 1);
        double settled = DesktopReading.DIE.of(idle.run(1800, 1, true, chance).after(), 1, chance, 1);
        assertTrue(settled - soon > 15, soon + " and " + settled);
        assertFalse(settled < 90);
    }
}
