package org.benchtrail.ticket;

import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.platform.NewerRecord;
import org.benchtrail.platform.RecordBroken;
import org.benchtrail.trail.StoredTrail;
import org.benchtrail.trail.Verification;
import org.jspecify.annotations.Nullable;

/**
 * What is stored of a ticket, and whether it holds.
 *
 * @param sheet as the trail tells it; null if the trail cannot be replayed
 * @param newer whether a later release wrote on it, so that this one cannot tell what it says
 */
record SheetRecord(
        TicketNumber number, StoredTrail stored, @Nullable JobSheet sheet, Verification verification, boolean newer) {
    SheetRecord(TicketNumber number, StoredTrail stored, @Nullable JobSheet sheet, Verification verification) {
        this(number, stored, sheet, verification, false);
    }

    static SheetRecord newer(TicketNumber number, StoredTrail stored, Verification verification) {
        return new SheetRecord(number, stored, null, verification, true);
    }

    SheetRecord with(Verification other) {
        return new SheetRecord(number, stored, sheet, other);
    }

    /** The same, but that nothing holds of what was found broken once and is not mended; what is wrong besides is told first. */
    SheetRecord marked() {
        Long incident = stored.broken();
        return incident != null && verification.holds() ? with(verification.marked(incident)) : this;
    }

    /** @throws RecordBroken if anything does not hold: nothing may be built on it */
    JobSheet sound() {
        if (sheet == null || !verification.holds()) {
            throw broken();
        }
        return sheet;
    }

    /** @throws RecordBroken if there is no sheet to show */
    JobSheet shown() {
        if (sheet == null) {
            throw broken();
        }
        return sheet;
    }

    /** What does not hold; empty if all does. */
    String fault() {
        return verification.holds() ? "" : words();
    }

    private RecordBroken broken() {
        return newer ? new NewerRecord(words()) : new RecordBroken(words());
    }

    private String words() {
        if (newer) {
            return "Ticket " + number + " was written on by a later release of Benchtrail from entry "
                    + verification.brokenAt()
                    + " on: this server only keeps it, and its trail can be read. Work on it on a server"
                    + " of that release.";
        }
        return "Nothing can be recorded on ticket " + number + ", because its record does not hold. "
                + verification.sentence();
    }
}
