package org.benchtrail.training;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.EndedTickets;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.desk.Remarked;
import org.benchtrail.core.method.desk.Waived;
import org.benchtrail.core.practice.VirtualClock;
import org.benchtrail.core.practice.job.Family;
import org.benchtrail.core.practice.job.Truth;
import org.benchtrail.core.practice.job.Truth.Played;
import org.junit.jupiter.api.Test;

class InventedMentorTest {
    private static final VirtualClock MORNING = VirtualClock.at(Instant.parse("2031-03-03T08:00:00Z"));
    private static final Truth TRUTH =
            new Truth(Family.DRIVE, Truth.of(Family.DRIVE, new byte[] {1, 2, 3}).seed(), "SCAR_AND_CABLE");

    private static Played played(String... acts) {
        return TRUTH.played(MORNING, List.of(acts));
    }

    private static String remark(JobSheet sheet, Played played) {
        Fact answer = InventedMentor.answer(sheet, played);
        assertTrue(answer instanceof Remarked, answer::toString);
        return ((Remarked) answer).text();
    }

    @Test
    void oldTraceOfADriveThatWorksAgain_isWaived() {
        Played mended = played("shut-down", "other-cable");
        assertTrue(mended.device().isWell());
        Fact answer = InventedMentor.answer(EndedTickets.measuredAgain("96").sheet(), mended);
        assertEquals("readings-back", ((Waived) answer).requirement());
    }

    @Test
    void valueThatWasNotMeasuredSince_isSentBack() {
        String words = remark(EndedTickets.verifying().sheet(), played("shut-down", "other-cable"));
        assertTrue(words.startsWith("Measure what was outside once more"), words);
    }

    @Test
    void whatStillShowsItsTrouble_isNotWaived() {
        assertTrue(remark(EndedTickets.measuredAgain("96").sheet(), played()).startsWith("I tried it"));
    }

    @Test
    void nothingIsWaivedWhereNothingIsOutside() {
        Played mended = played("shut-down", "other-cable");
        JobSheet within = EndedTickets.measuredAgain("60").sheet();
        assertThrows(Invalid.class, () -> InventedMentor.answer(within, mended));
        JobSheet open = EndedTickets.waived().sheet();
        assertThrows(Invalid.class, () -> InventedMentor.answer(open, mended));
    }
}
