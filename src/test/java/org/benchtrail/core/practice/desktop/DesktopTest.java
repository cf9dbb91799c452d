package org.benchtrail.core.practice.desktop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.IntStream;
import org.benchtrail.core.practice.Chance;
import org.benchtrail.core.practice.Harm;
import org.benchtrail.core.practice.Parameters;
import org.benchtrail.core.practice.desktop.Desktop.Act;
import org.benchtrail.core.practice.desktop.Desktop.Care;
import org.benchtrail.core.practice.desktop.Desktop.Ran;
import org.benchtrail.core.practice.desktop.DesktopHeat.Settled;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class DesktopTest {
    private static final Parameters<DesktopPart> SOUND = Parameters.sound();
    private static final Chance CHANCE = new Chance(new byte[32]);
    private static final Care CAREFUL = new Care(true, true, true);
    private static final Care CARELESS = new Care(false, false, false);

    private static Settled full(DesktopFault fault) {
        return new DesktopHeat(fault.in(SOUND)).settled(1);
    }

    private static void close(double expected, double actual) {
        assertEquals(expected, actual, 1e-4 * Math.abs(expected));
    }

    @ParameterizedTest
    @CsvSource({
        "NONE, 76.29, 58.95, 1717",
        "DUST, 98.01, 80.67, 2000",
        "SLOW_FAN, 98.01, 80.67, 600",
        "FAN_CURVE, 100, 83.31, 500",
        "DRIED_PASTE, 100, 46.36, 2000",
        "LOOSE_SINK, 100, 49.22, 2000",
        "SENSOR_HIGH, 76.29, 58.95, 1717"
    })
    void fullLoad_settlesWhereTheEquationsSay(DesktopFault fault, double die, double sink, double speed) {
        Settled settled = full(fault);
        assertEquals(die, settled.die(), 0.006);
        assertEquals(sink, settled.sink(), 0.006);
        assertEquals(speed, settled.speed(), 0.6);
    }

    @Test
    void faults_showWhatOnlyTheyShow() {
        assertEquals(
                25.41,
                full(DesktopFault.OVERCLOCK).die()
                        - full(DesktopFault.OVERCLOCK).sink(),
                0.006);
        assertEquals(139.24, full(DesktopFault.OVERCLOCK).watts(), 0.006);
        assertEquals(95.73, full(DesktopFault.OVERCLOCK).die(), 0.006);
        assertEquals(56.25, full(DesktopFault.CASE_BLOCKED).inlet(), 0.006);
        assertEquals(98.99, full(DesktopFault.CASE_BLOCKED).die(), 0.006);
        assertEquals(41.26, full(DesktopFault.HOT_ROOM).inlet(), 0.006);
        assertEquals(98.38, full(DesktopFault.HOT_ROOM).die(), 0.006);
        assertEquals(0.985, full(DesktopFault.FAN_CURVE).clock(), 0.0006);
        assertEquals(0.888, full(DesktopFault.LOOSE_SINK).clock(), 0.0006);
        close(61.656028, full(DesktopFault.DRIED_PASTE).watts());
        close(0.835486, full(DesktopFault.DRIED_PASTE).clock());
        assertTrue(full(DesktopFault.FAN_STALLED).trips());
        assertEquals(37.87, new DesktopHeat(SOUND).settled(0).die(), 0.006);
        assertEquals(700, new DesktopHeat(SOUND).settled(0).speed(), 1e-6);
    }

    /** Dust and a slow fan are as hot to the last digit: one reading of the speed tells them apart. */
    @Test
    void alikePair_isToldApartByTheFanAlone() {
        Settled dust = full(DesktopFault.DUST);
        Settled slow = full(DesktopFault.SLOW_FAN);
        assertEquals(dust.die(), slow.die(), 1e-6);
        assertEquals(dust.sink(), slow.sink(), 1e-6);
        assertEquals(1400, dust.speed() - slow.speed(), 0.6);
    }

    @Test
    void resistances_areThoseOfTheClosedForm() {
        close(0.0625, new DesktopHeat(SOUND).paste());
        close(0.75, new DesktopHeat(DesktopFault.DRIED_PASTE.in(SOUND)).paste());
        close(0.404258, new DesktopHeat(SOUND.with(DesktopPart.CONTACT, 0.15)).paste());
        close(1.133359, new DesktopHeat(SOUND.with(DesktopPart.CONTACT, 0.05)).paste());
        close(0.267391, new DesktopHeat(SOUND).sink(2000));
        close(0.479722, new DesktopHeat(SOUND).sink(700));
        close(0.479722, new DesktopHeat(SOUND.with(DesktopPart.AIR_PATH, 0.35)).sink(2000));
        close(1.716667, new DesktopHeat(SOUND).sink(0));
        close(144.391, new DesktopHeat(SOUND).timeConstant(2000));
        Settled fixed = new DesktopHeat(SOUND.with(DesktopPart.FIXED_DUTY, 1)).settled(1);
        close(31.255390, fixed.inlet());
        close(56.657564, fixed.sink());
        close(73.995064, fixed.die());
    }

    @ParameterizedTest
    @CsvSource({
        "0, 50.1847",
        "30, 54.7902",
        "60, 58.6766",
        "120, 64.7237",
        "300, 74.2797",
        "600, 78.6915",
        "900, 79.4993"
    })
    void warmingUp_followsTheClosedForm(double seconds, double die) {
        Parameters<DesktopPart> fixed = SOUND.with(DesktopPart.FIXED_DUTY, 0.7);
        Desktop idle = Desktop.idle(fixed);
        close(32.847181, idle.sink());
        Desktop later = idle.run(seconds, 1, true, CHANCE).after();
        close(die, new DesktopHeat(fixed).at(later.sink(), 1).die());
    }

    @Test
    void stalledFan_tripsWhenTheClosedFormSays() {
        Desktop idle = Desktop.idle(DesktopFault.FAN_STALLED.in(SOUND));
        close(53.688640, idle.sink());
        Ran ran = idle.run(3600, 1, false, CHANCE);
        assertEquals(920.396, ran.seconds(), 0.05);
        assertFalse(ran.after().on());
        assertEquals(
                List.of(Harm.Kind.WORK), ran.harm().stream().map(Harm::kind).toList());
        assertTrue(idle.run(3600, 1, true, CHANCE).harm().isEmpty());
        assertTrue(idle.run(900, 1, false, CHANCE).after().on());
    }

    @ParameterizedTest
    @EnumSource(DesktopFault.class)
    void atRest_whatGoesInGoesOut(DesktopFault fault) {
        DesktopHeat heat = new DesktopHeat(fault.in(SOUND));
        for (double load : new double[] {0, 0.3, 1}) {
            Settled settled = heat.settled(load);
            close(settled.watts(), (settled.sink() - settled.inlet()) / heat.sink(settled.speed()));
        }
    }

    @ParameterizedTest
    @EnumSource(
            value = DesktopPart.class,
            names = {"ROOM", "IDLE_WATTS", "LOAD_WATTS", "OTHER_WATTS", "LAYER", "DIE_TO_LID", "BASE"})
    void more_isNeverCooler(DesktopPart part) {
        for (DesktopFault fault : DesktopFault.values()) {
            double before = -1;
            for (int i = 0; i <= 10; i++) {
                double value = part.low() + (part.high() - part.low()) * i / 10;
                double die = new DesktopHeat(fault.in(SOUND).with(part, value))
                        .settled(1)
                        .die();
                assertTrue(die >= before - 1e-6, fault + " at " + value);
                before = die;
            }
        }
    }

    /** More dust is a narrower way for the air. */
    @ParameterizedTest
    @EnumSource(DesktopFault.class)
    void moreDust_isNeverCooler(DesktopFault fault) {
        double before = -1;
        for (int i = 20; i >= 4; i--) {
            double die = new DesktopHeat(fault.in(SOUND).with(DesktopPart.AIR_PATH, i / 20.0))
                    .settled(1)
                    .die();
            assertTrue(die >= before - 1e-6, "at " + i / 20.0);
            before = die;
        }
    }

    /** Asked for an eighth of a second at a time it takes steps of half the length: the fan's curve, throttle and trip are met alike. */
    @ParameterizedTest
    @EnumSource(DesktopFault.class)
    void halfTheStep_changesNothingThatIsSeen(DesktopFault fault) {
        Desktop whole = Desktop.idle(fault.in(SOUND));
        Desktop halved = whole;
        for (int minute = 1; minute <= 20 && whole.on(); minute++) {
            Ran ran = whole.run(60, 1, true, CHANCE);
            double seconds = 0;
            for (int i = 0; i < 480 && halved.on(); i++) {
                Ran part = halved.run(0.125, 1, true, CHANCE);
                halved = part.after();
                seconds += part.seconds();
            }
            whole = ran.after();
            assertEquals(whole.on(), halved.on(), "minute " + minute);
            assertEquals(ran.seconds(), seconds, 0.05, "minute " + minute);
            DesktopHeat heat = new DesktopHeat(whole.parts());
            assertEquals(
                    heat.at(whole.sink(), 1).die(), heat.at(halved.sink(), 1).die(), 0.01, "minute " + minute);
        }
    }

    @Test
    void rightAct_cools_andTheWrongOneCostsTimeAlone() {
        Desktop dusty = Desktop.idle(DesktopFault.DUST.in(SOUND));
        Desktop clean = dusty.act(Act.CLEAN, CAREFUL, CHANCE).after();
        assertEquals(76.92, new DesktopHeat(clean.parts()).settled(1).die(), 0.006);
        Desktop pasted = dusty.act(Act.PASTE_AND_MOUNT, CAREFUL, CHANCE).after();
        assertEquals(98.01, new DesktopHeat(pasted.parts()).settled(1).die(), 0.006);
        assertEquals(30, Act.PASTE_AND_MOUNT.minutes());
        for (var cure : List.of(
                List.of(DesktopFault.SLOW_FAN, Act.REPLACE_FAN),
                List.of(DesktopFault.FAN_CURVE, Act.SET_FAN_CURVE),
                List.of(DesktopFault.DRIED_PASTE, Act.PASTE_AND_MOUNT),
                List.of(DesktopFault.LOOSE_SINK, Act.PASTE_AND_MOUNT),
                List.of(DesktopFault.OVERCLOCK, Act.DEFAULT_CLOCK),
                List.of(DesktopFault.CASE_BLOCKED, Act.CLEAR_VENTS))) {
            Desktop ill = Desktop.idle(((DesktopFault) cure.get(0)).in(SOUND));
            Desktop well = ill.act((Act) cure.get(1), CAREFUL, CHANCE).after();
            assertEquals(76.29, new DesktopHeat(well.parts()).settled(1).die(), 0.006, cure.toString());
        }
    }

    @Test
    void carelessActs_doHarm_andTheSameWithCareDoNone() {
        Desktop hot = new Desktop(DesktopFault.DUST.in(SOUND), 80, false, 0);
        assertEquals(
                Harm.Kind.PERSON,
                hot.act(Act.CLEAN, CARELESS, CHANCE).harm().get(0).kind());
        assertTrue(hot.act(Act.CLEAN, CAREFUL, CHANCE).harm().isEmpty());
        assertEquals(0.6, hot.act(Act.CLEAN, CARELESS, CHANCE).after().parts().get(DesktopPart.FAN_HEALTH), 1e-12);
        assertEquals(
                Harm.Kind.WORK,
                hot.act(Act.FIRMWARE_DEFAULTS, CARELESS, CHANCE).harm().get(0).kind());
        Desktop cold = new Desktop(DesktopFault.DRIED_PASTE.in(SOUND), 24, false, 0);
        assertEquals(
                Harm.Kind.DEVICE,
                cold.act(Act.PASTE_AND_MOUNT, CAREFUL, CHANCE).harm().get(0).kind());
        Desktop warm = new Desktop(DesktopFault.DRIED_PASTE.in(SOUND), 45, false, 0);
        assertTrue(warm.act(Act.PASTE_AND_MOUNT, CAREFUL, CHANCE).harm().isEmpty());
        long bent = IntStream.range(0, 600)
                .filter(i -> cold.act(Act.PASTE_AND_MOUNT, CAREFUL, Chance.ofJob(new byte[1], "d", i)).harm().stream()
                        .anyMatch(h -> h.cost() > 0))
                .count();
        assertEquals(100, bent, 30);
    }

    @Test
    void manyTrips_mayKillTheBoard_theFirstThreeNever() {
        Parameters<DesktopPart> stalled = DesktopFault.FAN_STALLED.in(SOUND);
        Desktop often = new Desktop(stalled, 100, true, 3);
        Desktop seldom = new Desktop(stalled, 100, true, 2);
        long dead = 0;
        for (int i = 0; i < 300; i++) {
            Chance chance = Chance.ofJob(new byte[1], "d", i);
            dead += often.run(600, 1, true, chance).harm().size();
            assertTrue(seldom.run(600, 1, true, chance).harm().isEmpty());
        }
        assertTrue(dead >= 1 && dead <= 15, dead + " of 300");
    }

    @Test
    void radiation_showsBareMetalFarTooCool() {
        assertEquals(31.60, Desktop.radiated(70, 26, 0.10, 0.95), 0.005);
        assertEquals(70.00, Desktop.radiated(70, 26, 0.95, 0.95), 0.005);
        assertEquals(68.08, Desktop.radiated(70, 26, 0.90, 0.95), 0.005);
    }
}
