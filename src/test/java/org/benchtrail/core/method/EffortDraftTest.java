package org.benchtrail.core.method;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Instant;
import java.util.Set;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.document.EffortDraft;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.junit.jupiter.api.Test;

/** The time spent, drafted from the moments of the entries; the sums are done by hand. */
class EffortDraftTest {
    private static final Instant START = Instant.parse("2031-03-03T08:00:00Z");

    private static JobSheet opened() {
        return JobSheet.open(new Entry(stamp(1, 0, "ines"), report()));
    }

    private static Opened report() {
        return new Opened(
                "40718-6",
                "Switches off",
                "",
                Category.HEAT,
                "desktop D-3",
                "hall",
                17,
                Priority.Impact.ONE_PERSON,
                Priority.Urgency.HINDERED,
                "ines",
                Set.of(Role.TECHNICIAN));
    }

    private static Stamp stamp(int entry, long second, String by) {
        return new Stamp(entry, START.plusSeconds(second), by, Set.of(Role.TECHNICIAN));
    }

    private static JobSheet found(JobSheet sheet, long second, String by) {
        int next = sheet.entries() + 1;
        return sheet.with(new Entry(stamp(next, second, by), new FindingRecorded("Dust " + next, false)));
    }

    @Test
    void ticketJustOpened_tookAMinute() {
        assertEquals(1, EffortDraft.minutes(opened()));
    }

    @Test
    void aPauseCounts_upToHalfAnHour_andNotASecondLonger() {
        assertEquals(30, EffortDraft.minutes(found(opened(), 1800, "ines")));
        assertEquals(1, EffortDraft.minutes(found(opened(), 1801, "ines")));
        // 10 min, a night, 20 min and 30 s
        JobSheet twoDays = found(found(found(opened(), 600, "ines"), 80_000, "ines"), 81_230, "ines");
        assertEquals(30, EffortDraft.minutes(twoDays));
    }
}
