package org.benchtrail.core.practice.power;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.benchtrail.core.practice.Parameters;
import org.benchtrail.core.practice.power.Outlets.Port;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PowerTest {
    private static final Parameters<PowerPart> SOUND = Parameters.sound();
    private static final Battery NEW = new Battery(SOUND);
    private static final Battery WORN = new Battery(PowerFault.WORN_BATTERY.in(SOUND));
    private static final Battery BAD_BLOCK = new Battery(PowerFault.BAD_BLOCK.in(SOUND));

    private static void close(double expected, double actual) {
        assertEquals(expected, actual, 1e-4 * Math.abs(expected));
    }

    @ParameterizedTest
    @CsvSource({
        "150, 7.602273, 46.4826, 18.5560",
        "300, 14.704545, 21.7674, 8.6896",
        "450, 21.806818, 13.8355, 5.5232",
        "600, 28.909091, 10.0043, 3.9937"
    })
    void runtime_followsPeukert(double watts, double amps, double fresh, double worn) {
        close(amps, NEW.current(watts));
        close(fresh, NEW.runtime(watts));
        close(worn, WORN.runtime(watts));
    }

    @Test
    void voltage_sagsUntilItCollapses() {
        close(1063.07, NEW.runtime(0));
        close(25.56, NEW.openVolts(1));
        close(25.138848, NEW.volts(300, 1).orElseThrow());
        close(23.779059, WORN.volts(300, 1).orElseThrow());
        close(19.089534, BAD_BLOCK.volts(300, 1).orElseThrow());
        assertTrue(BAD_BLOCK.volts(450, 1).isEmpty());
        close(400.094, BAD_BLOCK.collapsesAbove(1));
        close(691.68, WORN.passesUpTo(1));
        close(230.21, BAD_BLOCK.passesUpTo(1));
    }

    /** The worn set passes the self-test and fails the runtime; the bad block fails it, but passes at a small load. */
    @Test
    void alikePair_isToldApartByLoadAndRuntime() {
        assertTrue(NEW.passesSelfTest(300, 1));
        assertTrue(WORN.passesSelfTest(300, 1));
        assertFalse(BAD_BLOCK.passesSelfTest(300, 1));
        assertTrue(BAD_BLOCK.passesSelfTest(200, 1));
        assertFalse(BAD_BLOCK.passesSelfTest(450, 1));
        close(Math.pow(0.45, 1.15), WORN.runtime(300) / NEW.runtime(300));
        close(NEW.runtime(300), BAD_BLOCK.runtime(300));
    }

    @Test
    void charge_comesBackSlowly_andGoesByTheLoad() {
        close(1 - Math.exp(-4), Battery.charged(0, 8));
        close(0.5, NEW.discharged(1, NEW.runtime(300) / 2, 300));
        assertEquals(0, NEW.discharged(1, 60, 300));
    }

    @Test
    void mains_fallWithWhatTheCircuitCarries() {
        Outlets sound = new Outlets(SOUND);
        close(218.104882, sound.mains(2000));
        close(212.569617, sound.mains(3200));
        Outlets low = new Outlets(PowerFault.LONG_CIRCUIT.in(SOUND));
        close(204.712477, low.mains(2000));
        assertTrue(low.onBattery(2000, false));
        assertFalse(sound.onBattery(2000, false));
        assertTrue(new Outlets(PowerFault.SENSITIVITY.in(SOUND)).onBattery(2000, false));
        assertTrue(sound.onBattery(3200, true));
        assertFalse(sound.onBattery(3200, false));
    }

    @Test
    void overload_shutsOffAboveATenthMoreAfterAMinute() {
        Outlets outlets = new Outlets(SOUND);
        assertFalse(outlets.isOverloaded(600));
        assertTrue(outlets.isOverloaded(601));
        assertFalse(outlets.shutsOff(660, 60));
        assertFalse(outlets.shutsOff(661, 59));
        assertTrue(outlets.shutsOff(661, 60));
    }

    @Test
    void ports_sendWhatTheCableEatsAsWell() {
        Outlets old = new Outlets(SOUND.with(Map.of(PowerPart.POE_VOLTS, 44.0, PowerPart.POE_OHM, 20.0)));
        close(13.3164, old.sent(new Port(1, 12.95, 20, 1)));
        close(14.1998, old.sent(new Port(1, 12.95, 60, 1)));
        close(15.4000, old.sent(new Port(1, 12.95, 100, 1)));
        Outlets outlets = new Outlets(SOUND);
        close(11.1099, outlets.sent(new Port(1, 11, 20, 1)));
        close(11.3436, outlets.sent(new Port(1, 11, 60, 1)));
        close(11.5987, outlets.sent(new Port(1, 11, 100, 1)));
    }

    @Test
    void budget_dropsTheLeastImportantPort_ofTwoAlikeTheHigherNumber() {
        List<Port> ports = List.of(
                new Port(1, 6.5, 0, 2),
                new Port(2, 6.5, 0, 2),
                new Port(3, 6.5, 0, 2),
                new Port(4, 6.5, 0, 2),
                new Port(5, 22, 0, 1),
                new Port(6, 11, 0, 3),
                new Port(7, 11, 0, 3));
        List<Integer> on =
                new Outlets(SOUND).poweredOf(ports).stream().map(Port::number).toList();
        assertEquals(List.of(5, 1, 2, 3, 4, 6), on);
    }

    @ParameterizedTest
    @CsvSource({"1e-6, 84, 0.00134310", "1e-6, 1538, 0.02430770", "1e-5, 84, 0.0133502", "1e-5, 1538, 0.2181413"})
    void loss_growsWithTheFrame(double errors, int bytes, double loss) {
        close(loss, new Outlets(SOUND.with(PowerPart.BIT_ERRORS, errors)).lossThereAndBack(bytes));
    }

    @Test
    void smallEchoes_tellNothingOfABadCable() {
        Outlets cable = new Outlets(PowerFault.BAD_PATCH_CABLE.in(SOUND));
        assertEquals(122, cable.echoesToSee(1538, 0.95));
        assertEquals(2229, cable.echoesToSee(84, 0.95));
    }
}
