package org.benchtrail.core.practice.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.practice.Chance;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What a mentor's job decides of its device, and that chance has no say in it there. */
class OwnJobDeviceTest {
    private static OwnJob job(
            Family family, OwnJob.@Nullable Knows knows, OwnJob.@Nullable Backup backup, Map<String, String> hazards) {
        Map<DeviceAct, OwnJob.Knows> all = new HashMap<>();
        family.acts().stream()
                .filter(a -> a.way() == DeviceAct.Way.ASK && knows != null)
                .forEach(a -> all.put(a, knows));
        String fault = family.faults().get(0);
        return new OwnJob(
                "t", family, "s", "m", "d", Map.of(), Map.of(fault, Map.of()), all, backup, hazards, Set.of());
    }

    private static Chance seed(int number) {
        return new Chance(ByteBuffer.allocate(32).putInt(28, number).array());
    }

    private static PracticeDevice device(OwnJob job, int seed) {
        return job.device(seed(seed), job.family().faults().get(0)).orElseThrow();
    }

    /** Every question of every device, whichever name its chance has. */
    @ParameterizedTest
    @EnumSource(Family.class)
    void requester_answersAsItIsWritten(Family family) {
        for (DeviceAct ask : family.acts()) {
            for (int i = 0; ask.way() == DeviceAct.Way.ASK && i < 20; i++) {
                String right = said(family, OwnJob.Knows.RIGHT, ask, i);
                assertNotEquals(Seen.UNKNOWN, right, ask::name);
                assertEquals(Seen.UNKNOWN, said(family, OwnJob.Knows.UNKNOWN, ask, i), ask::name);
                assertEquals(right.equals("yes") ? "no" : "yes", said(family, OwnJob.Knows.WRONG, ask, i), ask::name);
            }
        }
    }

    private static String said(Family family, OwnJob.Knows knows, DeviceAct ask, int seed) {
        return Optional.ofNullable(device(job(family, knows, null, Map.of()), seed)
                        .act(ask)
                        .seen())
                .orElseThrow()
                .value();
    }

    @Test
    void backup_isWhatItIsSaidToBe() {
        for (Family family : List.of(Family.DRIVE, Family.ARRAY)) {
            for (OwnJob.Backup backup : OwnJob.Backup.values()) {
                for (int i = 0; i < 20; i++) {
                    assertEquals(
                            Optional.of(backup == OwnJob.Backup.READABLE),
                            device(job(family, null, backup, Map.of()), i).isBackedUp());
                }
            }
        }
    }

    @Test
    void hazard_isNoticedByWhoeverLooksFirst_andOnce() {
        PracticeDevice found = device(job(Family.DESKTOP, null, null, Map.of("SMELL", "It smells burnt.")), 1);
        Answer asked = found.act(DesktopAct.ASK_NOISE);
        assertTrue(!asked.words().contains("burnt"));
        Answer looked = asked.after().act(DesktopAct.LOOK_DUST);
        assertTrue(looked.words().endsWith(" It smells burnt."), looked.words());
        assertTrue(!looked.after().act(DesktopAct.LOOK_FAN).words().contains("burnt"));
    }

    /** What is bound is the text too; a job of nobody's text is bound as it ever was. */
    @Test
    void truth_bindsTheText() {
        OwnJob one = job(Family.ARRAY, null, null, Map.of());
        Truth truth = Truth.of(one, new byte[32]);
        assertTrue(truth.canonical().contains("\"own\":\"" + one.digest() + "\""), truth::canonical);
        assertTrue(truth.canonical().endsWith("\"v\":2}"), truth::canonical);
        assertTrue(
                new Truth(Family.ARRAY, truth.seed(), truth.fault()).canonical().endsWith("\"v\":1}"));
    }
}
