package org.benchtrail.core.training;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.CauseCategory;
import org.benchtrail.core.diagnosis.Deviation;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.diagnosis.ModelSettings;
import org.benchtrail.core.diagnosis.Repair;
import org.benchtrail.core.diagnosis.Risk;
import org.benchtrail.core.practice.job.DesktopAct;
import org.benchtrail.core.practice.job.DeviceAct;
import org.junit.jupiter.api.Test;

/**
 * Regret, worked by hand: two causes of 7 to 3, repairs of 20 and 40 minutes, a test of 5, 240 to escalate. If all were certain, the
 * first repair first takes 20 + 0.3 x 40 = 32, the test first 5 + 0.7 x 20 + 0.3 x 40 = 31, the second repair first 40 + 0.7 x 20 =
 * 54. In the catalogue a repair is sure to 0.99 at most, which adds about 240 / 100 to each, and a test as well.
 */
class BeliefRegretTest {
    private static final double ABOUT = 0.7;
    private static final List<String> YES_NO = List.of("no", "yes");

    private static final Ties TIES = new Ties(
            "invented",
            Map.of(DesktopAct.LOOK_DUST, "t"),
            Map.of("a", List.of(DesktopAct.CLEAN), "b", List.of(DesktopAct.REPLACE_FAN)),
            Map.of(),
            Map.of());

    private static Cause cause(String id, double weight, double minutes, double yes) {
        Repair repair = new Repair("repair " + id, minutes - 0.5, 0.5, 0.99, 0, Risk.NONE, true, List.of());
        Deviation shows = new Deviation("t", Map.of("yes", yes, "no", 1 - yes));
        return new Cause(id, "cause " + id, weight, List.of(shows), "look at it", 5, repair, "none");
    }

    private static Belief belief() {
        Finding test = new Finding(
                "t",
                "Is it a?",
                Finding.Kind.ANSWER,
                YES_NO,
                Map.of("yes", 0.5, "no", 0.5),
                5,
                Risk.NONE,
                List.of(),
                null,
                null);
        CauseCategory category = new CauseCategory(
                "invented",
                "Invented",
                240,
                List.of(),
                List.of(test),
                List.of(cause("a", 0.7, 20, 0.999), cause("b", 0.3, 40, 0.001)),
                List.of());
        return Belief.reported(TIES, new Model(category, ModelSettings.STANDARD.withUnlisted(0)));
    }

    private static Debrief.Judged judged(DeviceAct act) {
        return belief().judge(act, List.of(), List.of());
    }

    @Test
    void theTestFirst_costsNothing_theLikelierRepairAMinute_theOtherTwentyThree() {
        assertEquals(0, judged(DesktopAct.LOOK_DUST).regret().orElseThrow(), 1e-9);
        Debrief.Judged likelier = judged(DesktopAct.CLEAN);
        assertEquals(1, likelier.regret().orElseThrow(), ABOUT);
        assertEquals(2, likelier.allowed(), 1e-9);
        assertFalse(likelier.diverges(), "a trifle");
        assertTrue(likelier.better().isEmpty());
        Debrief.Judged other = judged(DesktopAct.REPLACE_FAN);
        assertEquals(23, other.regret().orElseThrow(), ABOUT);
        assertTrue(other.diverges());
        assertEquals(
                "a", other.better().orElseThrow().id(), "a test that saves less than two minutes is not put first");
    }

    /** What makes safe and what tries the symptom is demanded, and what the catalogue does not know is not weighed. */
    @Test
    void whatIsDemandedOrFree_hasNoRegret() {
        for (DeviceAct act : List.of(DesktopAct.SAVE_WORK, DesktopAct.TRY_LOAD, DesktopAct.LISTEN)) {
            assertTrue(judged(act).regret().isEmpty(), act.name());
            assertFalse(judged(act).diverges());
        }
    }
}
