package org.benchtrail.ticket;

import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.platform.RecordBroken;
import org.benchtrail.trail.StoredTrail;
import org.benchtrail.trail.Verification;
import org.jspecify.annotations.Nullable;

/**
 * What is stored of a ticket, and whether it holds.
 *
 * @param sheet as the trail tells it; null if the trail cannot be replayed
 */
record SheetRecord(
        TicketNumber number, StoredTrail stored, @Nullable JobSheet sheet, Verification verification) {

    SheetRecord with(Verification other) {
        return new SheetRecord(number, stored, sheet, other);
    }

    /** @throws RecordBroken if anything does not hold: nothing may be built on it */
    JobSheet sound() {
        if (sheet == null || !verification.holds()) {
            throw new RecordBroken(words());
        }
        return sheet;
    }

    /** @throws RecordBroken if there is no sheet to show */
    JobSheet shown() {
        if (sheet == null) {
            throw new RecordBroken(words());
        }
        return sheet;
    }

    /** What does not hold; empty if all does. */
    String fault() {
        return verification.holds() ? "" : words();
    }

    private String words() {
        return "Nothing can be recorded on ticket " + number + ", because its record does not hold. "
                + verification.sentence();
    }
}
