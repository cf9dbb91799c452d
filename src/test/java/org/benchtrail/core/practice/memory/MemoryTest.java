package org.benchtrail.core.practice.memory;

import static org.benchtrail.core.practice.memory.MemoryPart.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.util.Map;
import org.benchtrail.core.practice.Chance;
import org.benchtrail.core.practice.Parameters;
import org.benchtrail.core.practice.Stated;
import org.junit.jupiter.api.Test;

class MemoryTest {
    private static final Parameters<MemoryPart> SOUND = Parameters.sound();
    /** No error but those of a module, at the temperature that rates are given for. */
    private static final Parameters<MemoryPart> BARE = SOUND.with(Map.of(WEAK, 0.0, TEMPERATURE, 40.0));

    private static Memory with(MemoryFault fault) {
        return new Memory(fault.in(SOUND), false);
    }

    private static void close(double expected, double actual) {
        assertEquals(expected, actual, 1e-4 * Math.abs(expected));
    }

    /** Worked by hand: Poisson, 1 - e^-0.6 and 1 - e^-2.4; textbook. */
    @Test
    void cleanPass_clearsNothing() {
        Memory bad = new Memory(BARE.with(MODULE_A, 0.4), false);
        close(0.4511884, bad.seen(1.5));
        close(0.9092820, bad.seen(6));
    }

    /** Worked by hand: the rate doubles by 10 K. */
    @Test
    void heat_doublesTheRate() {
        Memory bad = new Memory(BARE.with(SLOT_2, 0.4), false);
        close(0.8, bad.with(bad.parts().with(TEMPERATURE, 50.0)).rate());
        close(0.2, bad.with(bad.parts().with(TEMPERATURE, 30.0)).rate());
        close(0.02 * Math.pow(2, 5.2), with(MemoryFault.HEAT).rate());
        for (double kelvin = 30; kelvin < 95; kelvin++) {
            assertTrue(bad.with(bad.parts().with(TEMPERATURE, kelvin + 1)).rate()
                    > bad.with(bad.parts().with(TEMPERATURE, kelvin)).rate());
        }
    }

    @Test
    void speed_harmsOnlyAboveWhatIsStable() {
        Memory sound = new Memory(BARE, false);
        assertEquals(0, sound.with(BARE.with(SPEED, 3300.0)).rate());
        close(2 * 0.3, sound.with(BARE.with(SPEED, 3600.0)).rate());
    }

    /** Alike until the modules are changed over: errors of a module go along, those of a slot stay. */
    @Test
    void alikePair_isToldApartByChangingOver() {
        Memory module = with(MemoryFault.MODULE);
        Memory slot = with(MemoryFault.SLOT);
        for (int one : new int[] {1, 2}) {
            close(module.rate(one), slot.rate(one));
            close(module.rate(one), module.changed().rate(3 - one));
            close(slot.rate(one), slot.changed().rate(one));
        }
        assertEquals('A', module.module(1));
        assertEquals('B', module.changed().module(1));
        assertEquals(module, module.changed().changed());
    }

    @Test
    void onlySoundMemory_isSound() {
        for (MemoryFault fault : MemoryFault.values()) {
            assertEquals(fault == MemoryFault.NONE, MemorySeed.isSound(with(fault)), fault.name());
        }
    }

    /** Runs of six hours show an error as often as 1 - e^(-rate hours) says, and as many as rate times hours; 4 standard deviations. */
    @Test
    void runs_showAsManyAsExpected() {
        Memory bad = new Memory(BARE.with(MODULE_A, 0.4), false);
        int runs = 20_000;
        Chance chance = new Chance(ByteBuffer.allocate(32).putInt(28, 5).array());
        int seen = 0;
        int all = 0;
        for (int i = 0; i < runs; i++) {
            int errors = chance.count(bad.rate() * 6, "run|" + i);
            seen += errors > 0 ? 1 : 0;
            all += errors;
        }
        double share = bad.seen(6);
        assertEquals(share, seen / (double) runs, 4 * Math.sqrt(share * (1 - share) / runs));
        assertEquals(2.4, all / (double) runs, 4 * Math.sqrt(2.4 / runs));
        assertEquals(0, chance.count(0, "nothing"));
    }

    /** Which side is bad is drawn: neither slot nor module is always the one. */
    @Test
    void eachSide_isDrawn() {
        int slotOne = 0;
        int moduleA = 0;
        for (int i = 0; i < 200; i++) {
            Chance chance = new Chance(ByteBuffer.allocate(32).putInt(28, i).array());
            Memory slot =
                    MemorySeed.draw(chance, MemoryFault.SLOT, Stated.NOTHING).orElseThrow();
            Memory module =
                    MemorySeed.draw(chance, MemoryFault.MODULE, Stated.NOTHING).orElseThrow();
            slotOne += slot.rate(1) > slot.rate(2) ? 1 : 0;
            moduleA += module.parts().get(MODULE_A) > 0 ? 1 : 0;
        }
        assertTrue(slotOne > 70 && slotOne < 130, "slot 1: " + slotOne);
        assertTrue(moduleA > 70 && moduleA < 130, "module A: " + moduleA);
    }
}
