package org.benchtrail.core.practice.supply;

import static org.benchtrail.core.practice.supply.SupplyPart.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.benchtrail.core.practice.Parameters;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class SupplyTest {
    private static final Parameters<SupplyPart> SOUND = Parameters.sound();

    private static Supply with(SupplyFault fault) {
        return new Supply(fault.in(SOUND));
    }

    private static void close(double expected, double actual) {
        assertEquals(expected, actual, 1e-4 * Math.abs(expected));
    }

    /** Worked by hand: energy of a capacitor, C (325² - 250²) / 2, over 353 W; textbook. */
    @ParameterizedTest
    @CsvSource({"390e-6, 23.8226", "195e-6, 11.9113"})
    void holdUp_isTheCapacitorsEnergyOverThePower(double farad, double millis) {
        double inlet = 325 / Math.sqrt(2);
        Supply supply = new Supply(SOUND.with(
                Map.of(MAINS, inlet, FEED_OHM, 1e-12, CAPACITANCE, farad, GIVES_UP, 250.0, EFFICIENCY, 1.0)));
        close(millis, supply.holdUp(353));
        assertEquals(millis < SupplySeed.DIP, farad < 390e-6);
    }

    /** Worked by hand: Ohm's law on 24 A and 4 A. */
    @Test
    void rail_isGoodAtRest_andTooLowUnderLoad() {
        Supply tired = with(SupplyFault.HIGH_RESISTANCE);
        close(12.1 - 4 * 0.042, tired.rail(50));
        close(12.1 - 24 * 0.042, tired.rail(300));
        close(12.1 - 24 * 0.012, with(SupplyFault.NONE).rail(300));
        assertTrue(tired.rail(50) >= SupplySeed.LOWEST_RAIL);
        assertFalse(tired.rail(300) >= SupplySeed.LOWEST_RAIL);
    }

    /** What the inlet takes and what the feed turns to heat is what the wall gives. */
    @ParameterizedTest
    @EnumSource(SupplyFault.class)
    void feed_keepsItsEnergy(SupplyFault fault) {
        Supply supply = with(fault);
        double volts = supply.inlet(300);
        double drawn = 300 / 0.85;
        if (volts > 0) {
            double amps = drawn / volts;
            close(supply.parts().get(MAINS) * amps, drawn + supply.feedHeat(300));
            close(supply.parts().get(MAINS) - amps * supply.parts().get(FEED_OHM), volts);
        }
    }

    /** The heat of a contact of 20 ohm at 352.94 W: V = (230 + sqrt(230² - 80 P)) / 2 = 193.53, 1.8237 A, 66.52 W. */
    @Test
    void badContact_losesVoltsOnlyUnderLoad() {
        Supply supply = with(SupplyFault.BAD_CONTACT);
        close(193.526, supply.inlet(300));
        close(66.518, supply.feedHeat(300));
        assertTrue(supply.inlet(50) > 207 && supply.inlet(300) < 207);
        assertTrue(supply.holdUp(300) < SupplySeed.DIP);
    }

    @Test
    void moreLoad_isNeverBetter() {
        for (SupplyFault fault : SupplyFault.values()) {
            Supply supply = with(fault);
            for (double watts = 20; watts < 400; watts += 10) {
                assertTrue(supply.rail(watts + 10) <= supply.rail(watts));
                assertTrue(supply.holdUp(watts + 10) <= supply.holdUp(watts));
                assertTrue(supply.inlet(watts + 10) <= supply.inlet(watts));
                assertTrue(supply.carries(watts) || !supply.carries(watts + 10));
            }
        }
    }

    @Test
    void onlyASoundSupply_isSound() {
        for (SupplyFault fault : SupplyFault.values()) {
            assertEquals(fault == SupplyFault.NONE, SupplySeed.isSound(with(fault)), fault.name());
        }
        assertFalse(with(SupplyFault.STANDOFF).carries(50), "121 A and more flow to the case");
        assertTrue(with(SupplyFault.STANDOFF).isFed());
        assertFalse(with(SupplyFault.DEAD_OUTLET).isFed());
        assertTrue(with(SupplyFault.SMALL_SUPPLY).carries(50));
        close(390e-6 * 230 * 230, with(SupplyFault.NONE).stored());
    }

    /** Alike when asked, since both go off under load; the rail and the time without mains tell them apart. */
    @Test
    void alikePair_isToldApartByRailAndHoldUp() {
        Supply aged = with(SupplyFault.AGED_CAPACITOR);
        Supply tired = with(SupplyFault.HIGH_RESISTANCE);
        assertTrue(aged.rail(300) >= SupplySeed.LOWEST_RAIL && aged.holdUp(300) < SupplySeed.DIP);
        assertTrue(tired.rail(300) < SupplySeed.LOWEST_RAIL && tired.holdUp(300) >= SupplySeed.DIP);
    }
}
