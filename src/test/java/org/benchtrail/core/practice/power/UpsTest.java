package org.benchtrail.core.practice.power;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.practice.Chance;
import org.benchtrail.core.practice.Harm;
import org.benchtrail.core.practice.Parameters;
import org.benchtrail.core.practice.power.Ups.Care;
import org.benchtrail.core.practice.power.Ups.Done;
import org.benchtrail.core.practice.power.Ups.Group;
import org.benchtrail.core.practice.power.Ups.Load;
import org.junit.jupiter.api.Test;

class UpsTest {
    private static final Set<Care> CAREFUL = EnumSet.allOf(Care.class);
    private static final Set<Care> CARELESS = EnumSet.noneOf(Care.class);
    private static final Load SERVER = new Load("server", 250, Group.BATTERY, true);
    private static final Load SWITCH = new Load("switch", 50, Group.BATTERY, false);
    private static final Load PRINTER = new Load("printer", 900, Group.SURGE_ONLY, false);

    private static Ups of(PowerFault fault) {
        return new Ups(fault.in(Parameters.sound()), List.of(SERVER, SWITCH, PRINTER), 1, true);
    }

    private static List<Harm.Kind> kinds(Done done) {
        return done.harm().stream().map(Harm::kind).toList();
    }

    @Test
    void serverOnTheWrongOutlet_stopsThoughTheBatteryIsGood() {
        Ups wrong =
                of(PowerFault.NONE).moved("server", Group.SURGE_ONLY, CAREFUL).after();
        assertEquals(
                List.of("server", "printer"),
                wrong.stopsInAnOutage().stream().map(Load::name).toList());
        assertTrue(wrong.selfTest(CAREFUL).passed());
        Ups right = wrong.moved("server", Group.BATTERY, CAREFUL).after();
        assertEquals(
                List.of("printer"),
                right.stopsInAnOutage().stream().map(Load::name).toList());
        assertEquals(50, right.panel(), 1e-9);
        assertEquals(100 * 50 / 600.0, wrong.panel(), 1e-9);
    }

    @Test
    void selfTest_missesTheWornSet_andMeetsTheBadBlock() {
        assertTrue(of(PowerFault.NONE).selfTest(CARELESS).passed());
        assertTrue(of(PowerFault.WORN_BATTERY).selfTest(CARELESS).passed());
        Done bad = of(PowerFault.BAD_BLOCK).selfTest(CARELESS);
        assertFalse(bad.passed());
        assertTrue(bad.harm().isEmpty());
    }

    @Test
    void selfTestThatCollapses_takesUnsavedWorkWithIt() {
        Load more = new Load("second server", 150, Group.BATTERY, true);
        Ups ups = new Ups(PowerFault.BAD_BLOCK.in(Parameters.sound()), List.of(SERVER, SWITCH, more), 1, true);
        Done careless = ups.selfTest(CARELESS);
        assertEquals(List.of(Harm.Kind.WORK), kinds(careless));
        assertFalse(careless.after().on());
        assertTrue(ups.selfTest(CAREFUL).harm().isEmpty());
    }

    @Test
    void timedRun_showsTheWornSet_andTakesAServerDownThatIsNotSetToStop() {
        Done sound = of(PowerFault.NONE).timedRun(CARELESS, new Chance(new byte[1]));
        assertEquals(0.7 * 21.7674, sound.elapsed(), 1e-3);
        assertEquals(0.3, sound.after().charge(), 1e-12);
        assertTrue(sound.harm().isEmpty());
        assertEquals(
                0.7 * 8.6896,
                of(PowerFault.WORN_BATTERY)
                        .timedRun(CAREFUL, new Chance(new byte[1]))
                        .elapsed(),
                1e-3);
        long days = 0;
        for (int i = 0; i < 400; i++) {
            Done hard = of(PowerFault.WORN_BATTERY).timedRun(CARELESS, Chance.ofJob(new byte[1], "ups", i));
            assertEquals(Harm.Kind.WORK, hard.harm().get(0).kind());
            assertFalse(hard.after().on());
            days += hard.harm().size() - 1;
        }
        assertEquals(100, days, 30);
    }

    @Test
    void pulledPlug_hasNoEarth() {
        assertEquals(List.of(Harm.Kind.PERSON), kinds(of(PowerFault.NONE).mainsPulled(CARELESS)));
        assertTrue(of(PowerFault.NONE)
                .mainsPulled(EnumSet.of(Care.CASES_CLOSED))
                .harm()
                .isEmpty());
        Ups wrong =
                of(PowerFault.NONE).moved("server", Group.SURGE_ONLY, CAREFUL).after();
        assertEquals(List.of(Harm.Kind.WORK), kinds(wrong.mainsPulled(EnumSet.of(Care.CASES_CLOSED))));
    }

    @Test
    void printerOnTheBatterySide_shutsItOff() {
        Done moved = of(PowerFault.NONE).moved("printer", Group.BATTERY, CARELESS);
        assertFalse(moved.after().on());
        assertEquals(List.of(Harm.Kind.WORK), kinds(moved));
    }

    @Test
    void newSet_isVerifiedByTestAndRuntime_andWithoutCareKillsTheUnit() {
        for (PowerFault fault : List.of(PowerFault.WORN_BATTERY, PowerFault.BAD_BLOCK)) {
            Done done = of(fault).newBattery(CAREFUL);
            assertEquals(480, done.elapsed());
            assertEquals(90, done.cost());
            assertTrue(done.after().selfTest(CAREFUL).passed());
            assertEquals(21.7674, new Battery(done.after().parts()).runtime(300), 1e-3);
            Done careless = of(fault).newBattery(CARELESS);
            assertEquals(List.of(Harm.Kind.PERSON), kinds(careless));
            assertEquals(240, careless.harm().get(0).cost());
            assertFalse(careless.after().on());
        }
    }

    @Test
    void rightAct_endsTheFault_andWiringEndsTheJob() {
        Ups cable = of(PowerFault.BAD_PATCH_CABLE).otherCable().after();
        assertTrue(new Outlets(cable.parts()).lossThereAndBack(1538) < 1e-7);
        Ups set = of(PowerFault.SENSITIVITY).sensitivitySet().after();
        assertFalse(new Outlets(set.parts()).onBattery(2000, false));
        Done opened = of(PowerFault.LONG_CIRCUIT).wiringOpened();
        assertTrue(opened.over());
        assertEquals(List.of(Harm.Kind.PERSON), kinds(opened));
    }
}
