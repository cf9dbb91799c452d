package org.benchtrail.core.audit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.benchtrail.core.method.EndedTickets;
import org.benchtrail.core.method.EndedTickets.Told;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.Requirements;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.desk.Addendum;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.junit.jupiter.api.Test;

/** What an addendum leaves as it was: every gate's answer and what it rests on, readings, step, round and who worked on it. */
class AddendumLeavesTest {
    private static final Addendum WORDS =
            new Addendum(Addendum.About.REMARK, "It read 58 on the day after, from memory", "readings-back");

    private static List<String> gates(Told told) {
        return ReviewSheet.of(told.sheet(), told.policy()).rows().stream()
                .map(row -> row.code() + " " + row.gate() + " " + row.unasked() + " " + row.cited())
                .toList();
    }

    private static List<String> readings(Told told) {
        return told.sheet().all(ReadingRecorded.class).stream()
                .map(one -> one.entry() + " " + one.fact())
                .toList();
    }

    @Test
    void gates_readings_stepAndRound_areAsTheyWere() {
        Told before = EndedTickets.measuredAndClosed();
        Told after =
                EndedTickets.measuredAndClosed(WORDS, new Addendum(Addendum.About.CAUSE, "A worn clip", "cause-named"));
        assertEquals(before.sheet().entries() + 2, after.sheet().entries());
        assertEquals(gates(before), gates(after));
        assertEquals(Requirements.all().size(), gates(before).size());
        assertTrue(ReviewSheet.of(before.sheet(), before.policy()).rows().stream()
                .anyMatch(row -> row.code().equals("readings-back") && row.gate() == Requirement.State.MET));
        assertTrue(readings(before).size() > 1, readings(before).toString());
        assertEquals(readings(before), readings(after));
        assertEquals(Standing.CLOSED, after.sheet().course().standing());
        assertEquals(Step.DOCUMENT, after.sheet().step());
        assertEquals(before.sheet().step(), after.sheet().step());
        assertEquals(before.sheet().round(), after.sheet().round());
        assertEquals(before.sheet().hands(), after.sheet().hands());
        assertEquals(before.trail(), after.trail().subList(0, before.trail().size()), "what was written stays");
    }

    /** Held against something that does change them. */
    @Test
    void whatIsDoneAgain_changesThem() {
        Told before = EndedTickets.measuredAndClosed();
        Told reopened = EndedTickets.measuredAndClosed(new Reopened("It is hot again"));
        assertNotEquals(
                before.sheet().course().standing(), reopened.sheet().course().standing());
    }
}
