package org.benchtrail.core.practice.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.practice.Harm;
import org.benchtrail.core.practice.VirtualClock;
import org.benchtrail.core.practice.job.Truth.Played;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class TruthTest {
    private static final VirtualClock MORNING = VirtualClock.at(Instant.parse("2031-03-03T08:00:00Z"));
    private static final byte[] SALT = new byte[32];

    private static Truth truth(Family family, String fault, int number) {
        String seed = Truth.of(
                        family, ByteBuffer.allocate(32).putInt(28, number).array())
                .seed();
        return new Truth(family, seed, fault);
    }

    private static Played played(Truth truth, String... acts) {
        return truth.played(MORNING, List.of(acts));
    }

    private static List<Harm.Kind> harm(Truth truth, String... acts) {
        return played(truth, acts).harm().stream().map(Harm::kind).toList();
    }

    @Test
    void commitment_opensForThisTruthAlone() {
        Truth truth = truth(Family.DESKTOP, "DUST", 1);
        String commitment = truth.commitment(SALT);
        assertEquals(64, commitment.length());
        assertEquals(commitment, truth(Family.DESKTOP, "DUST", 1).commitment(SALT));
        assertNotEquals(commitment, truth(Family.DESKTOP, "SLOW_FAN", 1).commitment(SALT));
        assertNotEquals(commitment, truth(Family.DESKTOP, "DUST", 2).commitment(SALT));
        byte[] other = new byte[32];
        other[31] = 1;
        assertNotEquals(commitment, truth.commitment(other));
    }

    @ParameterizedTest
    @EnumSource(Family.class)
    void seeds_drawEveryFault(Family family) {
        Set<String> drawn = new HashSet<>();
        for (int i = 0; i < 300; i++) {
            drawn.add(Truth.of(family, ByteBuffer.allocate(32).putInt(28, i).array())
                    .fault());
        }
        assertEquals(Set.copyOf(family.faults()), drawn);
    }

    /** Twelve seeds a fault: it is ill, and one of the mending acts makes it well. */
    @ParameterizedTest
    @EnumSource(Family.class)
    void everyFault_isIllAndCanBeMended(Family family) {
        List<DeviceAct> mending = family.acts().stream()
                .filter(a -> a.way() == DeviceAct.Way.MEND)
                .toList();
        for (String fault : family.faults()) {
            for (int i = 0; i < 12; i++) {
                PracticeDevice ill = truth(family, fault, i).start();
                assertFalse(ill.isWell(), fault);
                assertTrue(
                        mending.stream().anyMatch(a -> isMended(ill, List.of(a)))
                                || mending.stream()
                                        .anyMatch(a -> mending.stream().anyMatch(b -> isMended(ill, List.of(a, b)))),
                        fault + " " + i);
            }
        }
    }

    private static boolean isMended(PracticeDevice ill, List<DeviceAct> acts) {
        PracticeDevice now = ill;
        for (DeviceAct act : acts) {
            for (DeviceAct first : act.prudent()) {
                now = now.act(first).after();
            }
            now = now.act(act).after();
        }
        return now.isWell();
    }

    @ParameterizedTest
    @EnumSource(Family.class)
    void answers_doNotDependOnTheirOrder(Family family) {
        List<DeviceAct> harmless = family.acts().stream()
                .filter(a -> a.way() == DeviceAct.Way.ASK || a.way() == DeviceAct.Way.LOOK)
                .filter(a -> a != DriveAct.LOOK_SELF && a != DriveAct.LOOK_LOG)
                .toList();
        for (String fault : family.faults()) {
            PracticeDevice one = truth(family, fault, 5).start();
            PracticeDevice other = one;
            for (DeviceAct act : harmless) {
                one = one.act(act).after();
            }
            for (int i = harmless.size() - 1; i >= 0; i--) {
                other = other.act(harmless.get(i)).after();
            }
            for (DeviceAct act : harmless) {
                assertEquals(one.act(act).seen(), other.act(act).seen(), act.name());
            }
        }
    }

    @Test
    void readingAgain_isAnotherReading() {
        Truth truth = truth(Family.DRIVE, "HOT_DRIVE", 3);
        Set<String> shown = new HashSet<>();
        Played played = truth.opened(MORNING);
        for (int i = 0; i < 8; i++) {
            played = played.with(DriveAct.TEMPERATURE);
            shown.add(played.steps().get(i).answer().words());
        }
        assertTrue(shown.size() > 1, shown::toString);
        assertEquals(16, played.clock().handsOn());
    }

    @Test
    void sameActs_endTheSame() {
        for (Family family : Family.values()) {
            String[] all = family.acts().stream().map(DeviceAct::id).toArray(String[]::new);
            Truth truth = truth(family, family.faults().get(0), 4);
            Played one = played(truth, all);
            Played other = played(truth, all);
            assertEquals(one.clock(), other.clock());
            assertEquals(
                    one.steps().stream().map(s -> s.answer().words()).toList(),
                    other.steps().stream().map(s -> s.answer().words()).toList());
            assertEquals(one.harm(), other.harm());
        }
        Assertions.assertThrows(Invalid.class, () -> Family.DRIVE.act("clean"));
    }

    @Test
    void settingReadSoon_isFarTooCool() {
        Truth dust = truth(Family.DESKTOP, "DUST", 2);
        double soon = Double.parseDouble(
                played(dust, "die-soon").steps().get(0).answer().seen().value());
        double settled = Double.parseDouble(
                played(dust, "die-load").steps().get(0).answer().seen().value());
        assertTrue(settled - soon > 10, soon + " and " + settled);
    }

    /** Each harmful act, and its honest twin that harms nobody. */
    @Test
    void carelessActs_doHarm_andTheirTwinsDoNone() {
        Truth dust = truth(Family.DESKTOP, "DUST", 1);
        assertEquals(List.of(Harm.Kind.PERSON), harm(dust, "save-work", "die-load", "clean"));
        assertEquals(List.of(), harm(dust, "save-work", "die-load", "let-cool", "clean"));
        assertTrue(played(dust, "let-cool", "clean").device().isWell());
        assertEquals(List.of(Harm.Kind.WORK), harm(dust, "firmware-defaults"));
        assertEquals(List.of(), harm(dust, "note-settings", "firmware-defaults"));
        Truth stalled = truth(Family.DESKTOP, "FAN_STALLED", 1);
        assertEquals(List.of(Harm.Kind.WORK), harm(stalled, "try-load"));
        assertEquals(List.of(), harm(stalled, "save-work", "try-load"));
        Truth paste = truth(Family.DESKTOP, "DRIED_PASTE", 1);
        assertEquals(List.of(Harm.Kind.DEVICE), harm(paste, "let-cool", "let-cool", "let-cool", "paste"));
        assertEquals(List.of(), harm(paste, "hand-warm", "paste"));
        Truth cable = truth(Family.DRIVE, "DATA_CABLE", 1);
        assertEquals(List.of(Harm.Kind.DATA), harm(cable, "other-cable"));
        assertEquals(List.of(), harm(cable, "shut-down", "other-cable"));
        assertEquals(List.of(Harm.Kind.DATA), harm(cable, "write-test"));
        assertEquals(List.of(), harm(cable, "copy-data", "write-test"));
        Truth failing = truth(Family.DRIVE, "FAILING_SURFACE", 1);
        assertTrue(harm(failing, "repair-files").contains(Harm.Kind.DATA));
        Truth block = truth(Family.POWER, "BAD_BLOCK", 1);
        assertEquals(List.of(), harm(block, "insulate", "new-battery"));
        assertEquals(List.of(Harm.Kind.PERSON), harm(block, "new-battery"));
        Truth circuit = truth(Family.POWER, "LONG_CIRCUIT", 1);
        assertEquals(List.of(Harm.Kind.WORK), harm(circuit, "printer-on-battery"));
        assertEquals(List.of(Harm.Kind.PERSON), harm(circuit, "open-wiring"));
        assertTrue(played(circuit, "open-wiring").isOver());
        assertTrue(harm(circuit, "open-case", "pull-mains").contains(Harm.Kind.PERSON));
        assertEquals(List.of(), harm(circuit, "save-work", "pull-mains"));
    }

    @Test
    void carelessHandsAtASupply_doHarm_andTheirTwinsDoNone() {
        Truth weak = truth(Family.SUPPLY, "HIGH_RESISTANCE", 1);
        assertEquals(List.of(Harm.Kind.PERSON), harm(weak, "open-supply"));
        assertTrue(played(weak, "open-supply").isOver());
        assertEquals(List.of(Harm.Kind.WORK), harm(weak, "rail-load"));
        assertEquals(List.of(), harm(weak, "save-work", "rail-load"));
        assertEquals(List.of(), harm(weak, "rail-idle"));
        assertTrue(harm(weak, "strap", "new-supply").contains(Harm.Kind.PERSON));
        assertTrue(
                harm(weak, "pull-plug", "try-work", "strap", "new-supply").contains(Harm.Kind.PERSON),
                "plugged in again");
        assertEquals(List.of(), harm(weak, "pull-plug", "strap", "new-supply"));
        assertTrue(played(weak, "pull-plug", "strap", "new-supply").device().isWell());
        long killed = IntStream.range(0, 60)
                .filter(i -> harm(truth(Family.SUPPLY, "STANDOFF", i), "pull-plug", "lift-board")
                        .contains(Harm.Kind.DEVICE))
                .count();
        assertTrue(killed >= 6 && killed <= 27, killed + " of 60");
    }

    @Test
    void carelessHandsAtMemory_doHarm_andTheirTwinsDoNone() {
        Truth slot = truth(Family.MEMORY, "SLOT", 1);
        assertEquals(List.of(Harm.Kind.WORK), harm(slot, "long-test"));
        assertEquals(List.of(), harm(slot, "save-work", "long-test"));
        assertEquals(List.of(Harm.Kind.WORK), harm(slot, "save-work", "long-test", "long-test"), "somebody went on");
        assertTrue(harm(slot, "save-work", "strap", "other-slots").contains(Harm.Kind.PERSON));
        assertEquals(List.of(Harm.Kind.DATA), harm(slot, "repair-files"));
        assertEquals(List.of(), harm(slot, "save-work", "pull-plug", "strap", "other-slots", "repair-files"));
        assertTrue(played(slot, "save-work", "pull-plug", "strap", "other-slots")
                .device()
                .isWell());
    }

    /** An hour and a half shows nothing in about half of the devices that are ill. */
    @Test
    void onePass_isOftenClean_onMemoryThatErrs() {
        long clean = IntStream.range(0, 200)
                .mapToObj(i -> played(truth(Family.MEMORY, "MODULE", i), "save-work", "one-pass"))
                .filter(p -> p.steps().get(1).answer().seen().value().equals("0"))
                .count();
        assertTrue(clean > 60 && clean < 120, clean + " of 200");
    }

    @Test
    void carelessHandsAtAnArray_loseTheSet_andTheirTwinsDoNot() {
        Truth member = truth(Family.ARRAY, "MEMBER", 1);
        assertEquals(List.of(Harm.Kind.DATA), harm(member, "pull-to-see"));
        assertFalse(played(member, "pull-to-see", "locate", "replace").device().isWell(), "a lost set stays lost");
        assertEquals(List.of(Harm.Kind.WORK), harm(member, "copy-data", "pull-to-see"));
        assertEquals(List.of(Harm.Kind.DATA), harm(member, "new-volume"));
        assertEquals(List.of(), harm(member, "copy-data", "locate", "replace"));
        assertTrue(played(member, "copy-data", "locate", "replace").device().isWell());
        assertFalse(played(member, "copy-data", "locate", "other-bay").device().isWell());
        Truth cache = truth(Family.ARRAY, "CACHE", 1);
        assertEquals(List.of(Harm.Kind.DATA), harm(cache, "cache-battery"));
        assertEquals(List.of(), harm(cache, "shut-down", "cache-battery"));
        long wrong = IntStream.range(0, 100)
                .filter(i -> harm(truth(Family.ARRAY, "BAY", i), "other-bay").contains(Harm.Kind.DATA))
                .count();
        assertTrue(wrong > 35 && wrong < 70, wrong + " of 100 without a look at lamp and serial number");
    }

    @Test
    void drivesReplacedWithoutAReadableBackup_loseTheirData() {
        int lost = 0;
        for (int i = 0; i < 60; i++) {
            Truth truth = truth(Family.DRIVE, "FAILING_SURFACE", i);
            lost += harm(truth, "shut-down", "replace").isEmpty() ? 0 : 1;
            assertEquals(
                    List.of(),
                    harm(truth, "copy-data", "shut-down", "replace").stream()
                            .filter(k -> played(truth, "copy-data").harm().isEmpty())
                            .toList());
        }
        assertTrue(lost >= 10 && lost <= 35, lost + " of 60");
    }
}
