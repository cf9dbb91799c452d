package org.benchtrail.core.practice.array;

import static org.benchtrail.core.practice.array.ArrayPart.*;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.benchtrail.core.practice.Parameters;
import org.junit.jupiter.api.Test;

class ArrayTest {
    private static final Parameters<ArrayPart> SOUND = Parameters.sound();

    private static DriveSet with(ArrayFault fault) {
        return new DriveSet(fault.in(SOUND), false);
    }

    private static void close(double expected, double actual) {
        assertEquals(expected, actual, 1e-4 * Math.abs(expected));
    }

    /** Worked by hand: 4e12 / 150e6 s; 1 - e^-0.112 for 1.12e14 bits at 1e-15, binomial and all but Poisson; textbook. */
    @Test
    void rebuild_takesHours_andReadsWhatMayNotBeReadable() {
        DriveSet set = with(ArrayFault.NONE);
        close(7.4074, set.rebuildHours());
        close(0.105956, set.unreadable(14e12));
        close(set.unreadable(12e12), set.rebuildFails());
        close(0.105956, new DriveSet(SOUND.with(Map.of(MEMBERS, 2.0, CAPACITY, 14e12)), false).rebuildFails());
    }

    /** Worked by hand: one server and one queue, S / (1 - load); four accesses of 8 ms without the cache; textbook. */
    @Test
    void latency_isServiceOverWhatIsFree() {
        close(5, with(ArrayFault.NONE).latency());
        close(40, with(ArrayFault.CACHE).latency());
        close(4 / 0.15, with(ArrayFault.CHECKING).latency());
        for (double load = 0; load < 1.2; load += 0.02) {
            assertTrue(new DriveSet(SOUND.with(LOAD, load + 0.02), false).latency()
                    >= new DriveSet(SOUND.with(LOAD, load), false).latency());
        }
    }

    /** Alike in the controller's list; in another bay only the drive that is well comes back. */
    @Test
    void alikePair_isToldApartByTheOtherBay() {
        DriveSet member = with(ArrayFault.MEMBER);
        DriveSet bay = with(ArrayFault.BAY);
        assertTrue(member.isDegraded() && bay.isDegraded());
        assertEquals(member.latency(), bay.latency());
        assertTrue(member.with(member.parts().restored(BAY_FAILS)).isDegraded());
        assertFalse(bay.with(bay.parts().restored(BAY_FAILS)).isDegraded());
        assertTrue(bay.with(bay.parts().restored(DRIVE_FAILS)).isDegraded());
    }

    @Test
    void parity_makesUpForOneMemberAlone() {
        assertFalse(with(ArrayFault.CACHE).pulled().lost());
        assertTrue(with(ArrayFault.MEMBER).pulled().lost());
        DriveSet gone = with(ArrayFault.BAY).pulled();
        assertFalse(ArraySeed.isSound(gone.with(gone.parts().restored(BAY_FAILS))), "nothing brings it back");
    }

    @Test
    void onlyASoundSet_isSound() {
        for (ArrayFault fault : ArrayFault.values()) {
            assertEquals(fault == ArrayFault.NONE, ArraySeed.isSound(with(fault)), fault.name());
        }
    }
}
