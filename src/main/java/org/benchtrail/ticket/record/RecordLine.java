package org.benchtrail.ticket.record;

import java.util.List;
import org.benchtrail.ticket.identify.MarkedPicture;
import org.benchtrail.ticket.identify.ReadingWords;
import org.jspecify.annotations.Nullable;

/**
 * One entry of a record.
 *
 * @param round in which it was recorded; 0 if the ticket had but one
 * @param struck whether it no longer stands
 * @param picture null for what is none
 * @param after what was done to it later
 */
public record RecordLine(
        int entry,
        String kind,
        String text,
        String stamp,
        int round,
        boolean late,
        boolean struck,
        @Nullable MarkedPicture picture,
        After after) {

    /** What was done to an entry later: how it read before, and what was remarked on it. */
    public record After(List<Change> changes, List<Remark> remarks) {
        public boolean isAny() {
            return !changes.isEmpty() || !remarks.isEmpty();
        }
    }

    /** @param was how the entry read until then */
    public record Change(int entry, String was, String reason, String stamp) {}

    public record Remark(String text, String stamp) {}

    /** A measured value beside its limit. */
    public record Reading(RecordLine line, String what, ReadingWords words, String source, String instrument) {}

    /**
     * A check with what was expected before, and what was seen.
     *
     * @param result in words; empty if there is none, and so what was seen
     * @param resultEntry 0 if there is none
     */
    public record Check(
            RecordLine line,
            String what,
            String cautions,
            String expected,
            String result,
            String seen,
            String seenStamp,
            int resultEntry) {}
}
