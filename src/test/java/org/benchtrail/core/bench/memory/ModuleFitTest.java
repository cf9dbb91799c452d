package org.benchtrail.core.bench.memory;

import static org.benchtrail.core.Published.check;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.FigureOf;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.memory.ModuleFit.Buffering;
import org.benchtrail.core.bench.memory.ModuleFit.Correction;
import org.benchtrail.core.bench.memory.ModuleFit.Form;
import org.benchtrail.core.bench.memory.ModuleFit.Generation;
import org.benchtrail.core.bench.memory.ModuleFit.Input;
import org.benchtrail.core.bench.memory.ModuleFit.Installed;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class ModuleFitTest {
    /** A case that fits in every respect until something is set otherwise. */
    private static final class Case {
        private Generation board = Generation.DDR4;
        private double boardVolts = 1.2;
        private Correction correction = Correction.SUPPORTED;
        private int slots = 2;
        private double largest = 32;
        private double most = 64;
        private List<Installed> installed = List.of(new Installed(16, Buffering.UNBUFFERED, false, 3200));
        private Generation generation = Generation.DDR4;
        private Form form = Form.DIMM;
        private double volts = 1.2;
        private Buffering buffering = Buffering.UNBUFFERED;
        private boolean corrects;
        private int speed = 3200;
        private double size = 16;

        Result result() {
            return ModuleFit.calculate(new Input(
                    board,
                    Form.DIMM,
                    boardVolts,
                    Buffering.UNBUFFERED,
                    correction,
                    3200,
                    slots,
                    largest,
                    most,
                    installed,
                    generation,
                    form,
                    volts,
                    buffering,
                    corrects,
                    speed,
                    size));
        }

        Level rule(String name) {
            return FigureOf.rule(result(), name).outcome();
        }
    }

    @Test
    void likeForLike_fits() {
        Result result = new Case().result();
        assertEquals("fits", result.judgement().words());
        assertEquals(32, FigureOf.value(result, "Memory in all"), 0);
        assertEquals(List.of("STATIC"), result.cautions());
    }

    @ParameterizedTest
    @CsvSource({
        "DDR, 184, 200, 2.5",
        "DDR2, 240, 200, 1.8",
        "DDR3, 240, 204, 1.5",
        "DDR4, 288, 260, 1.2",
        "DDR5, 288, 262, 1.1"
    })
    void contactsAndVoltages_areThoseOfTheStandards(Generation generation, int full, int small, double volts) {
        String source = "public teaching material on JEDEC modules: contacts and volts";
        check(source, full, generation.pins(Form.DIMM), 0);
        check(source, small, generation.pins(Form.SO_DIMM), 0);
        check(source, true, generation.allows(volts));
    }

    @ParameterizedTest
    @CsvSource({
        "DDR, JESD79F, 2.5, 2.5",
        "DDR2, JESD79-2, 1.8, 1.8",
        "DDR3, JESD79-3 and JESD79-3-1, 1.35, 1.5",
        "DDR4, JESD79-4, 1.2, 1.2",
        "DDR5, JESD79-5, 1.1, 1.1"
    })
    void voltages_areThoseOfTheGenerationAndNoOthers(Generation generation, String standard, double low, double high) {
        for (double volts : new double[] {1.1, 1.2, 1.25, 1.35, 1.5, 1.8, 2.5, 3.3}) {
            check("JEDEC " + standard + ", from memory", volts == low || volts == high, generation.allows(volts));
        }
    }

    @ParameterizedTest
    @EnumSource(Generation.class)
    void anotherGeneration_neverFits(Generation generation) {
        Case c = new Case();
        c.generation = generation;
        c.volts = List.of(2.5, 1.8, 1.5, 1.2, 1.1).get(generation.ordinal());
        assertEquals(generation == Generation.DDR4 ? Level.GOOD : Level.BAD, c.rule("generation"));
    }

    @ParameterizedTest
    @CsvSource({"1.5, 1.35, GOOD", "1.5, 1.5, GOOD", "1.35, 1.35, GOOD", "1.35, 1.5, BAD"})
    void thirdGeneration_lowVoltageModulesAlsoRunAtOneAndAHalf(double board, double module, Level outcome) {
        Case c = new Case();
        c.board = Generation.DDR3;
        c.boardVolts = board;
        c.generation = Generation.DDR3;
        c.volts = module;
        check("JEDEC JESD79-3-1 (DDR3L), from memory", outcome, c.rule("voltage"));
    }

    @Test
    void registeredInABoardForUnbuffered_isRefusedTwice() {
        Case c = new Case();
        c.buffering = Buffering.REGISTERED;
        assertEquals(Level.BAD, c.rule("buffering"));
        assertEquals(Level.BAD, c.rule("mixing of buffering"));
        assertTrue(c.result().judgement().reason().contains("Not met: buffering, mixing of buffering."));
    }

    @ParameterizedTest
    @CsvSource({
        "REQUIRED, false, BAD",
        "REQUIRED, true, CAREFUL",
        "SUPPORTED, true, CAREFUL",
        "SUPPORTED, false, GOOD",
        "NOT_SUPPORTED, true, CAREFUL",
        "NOT_SUPPORTED, false, GOOD"
    })
    void errorCorrection_besideAModuleWithout(Correction board, boolean module, Level outcome) {
        Case c = new Case();
        c.correction = board;
        c.corrects = module;
        assertEquals(outcome, c.rule("error correction"));
    }

    @Test
    void sizes_areHeldAgainstSlotAndBoard() {
        Case c = new Case();
        c.size = 48;
        assertEquals(Level.BAD, c.rule("size for a slot"));
        assertEquals(Level.GOOD, c.rule("size in all"));
        c.most = 63;
        assertEquals(Level.BAD, c.rule("size in all"));
        assertEquals(-1, FigureOf.value(c.result(), "Room to the limit"), 0);
        c.slots = 1;
        assertEquals(Level.BAD, c.rule("free slot"));
    }

    @Test
    void slowerModule_slowsAll() {
        Case c = new Case();
        c.speed = 2400;
        assertEquals("fits with a warning", c.result().judgement().words());
        assertEquals(2400, FigureOf.value(c.result(), "Speed they run at, at most"), 0);
    }

    @Test
    void smallModule_doesNotGoIntoTheFullSlot() {
        Case c = new Case();
        c.form = Form.SO_DIMM;
        assertEquals(Level.BAD, c.rule("form factor"));
    }

    @Test
    void impossibleBoards_areRefused() {
        Case volts = new Case();
        volts.volts = 1.35;
        assertEquals(
                "voltage",
                assertThrows(Invalid.class, volts::result).problems().get(0).field());
        Case crowded = new Case();
        crowded.slots = 1;
        crowded.installed = List.of(crowded.installed.get(0), crowded.installed.get(0));
        assertEquals(
                "installed",
                assertThrows(Invalid.class, crowded::result).problems().get(0).field());
    }
}
