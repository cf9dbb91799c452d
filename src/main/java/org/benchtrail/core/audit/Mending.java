package org.benchtrail.core.audit;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.benchtrail.core.statistics.Interval;
import org.benchtrail.core.statistics.Proportion;
import org.jspecify.annotations.Nullable;

/**
 * What became of what reviewers asked to be added to papers. Only what is due counts, so that what comes quickly does not count before
 * what does not come at all.
 *
 * @param asked all that was asked for
 * @param due of it, what is due by now
 * @param inTime of what is due, what was written by then
 * @param mended of what is due, what was written and countersigned, whenever
 */
public record Mending(int asked, int due, int inTime, int mended) {
    /** So many make a share; common practice. */
    public static final int ENOUGH = 30;

    private static final double CONFIDENCE = 0.95;

    /** @param written when it was written; null if it was not */
    public record Wanted(Instant due, @Nullable Instant written, boolean countersigned) {
        boolean isInTime() {
            return written != null && !written.isAfter(due);
        }

        boolean isMended() {
            return written != null && countersigned;
        }
    }

    public static Mending of(List<Wanted> all, Instant now) {
        List<Wanted> due = all.stream().filter(w -> !w.due().isAfter(now)).toList();
        return new Mending(
                all.size(),
                due.size(),
                (int) due.stream().filter(Wanted::isInTime).count(),
                (int) due.stream().filter(Wanted::isMended).count());
    }

    /** The share of what is due that was mended, and its 95 % interval by Wilson's score; empty if too little is due. */
    public Optional<Interval> rate() {
        return due < ENOUGH ? Optional.empty() : Optional.of(new Proportion(mended, due).wilson(CONFIDENCE));
    }
}
