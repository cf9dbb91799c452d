package org.benchtrail.learning;

import java.time.Instant;
import java.util.List;
import org.benchtrail.catalogue.ShiftLine;

/**
 * What learning from the accepted cases would change.
 *
 * @param base version in force, which the change is held against
 * @param at the moment that ages are taken from
 * @param fingerprint of the figures, so that exactly what was looked at is applied
 * @param cases accepted cases
 * @param unknown accepted cases whose cause the catalogue no longer lists; they do not count
 * @param shifts every figure that moves, the largest first
 */
public record LearningPreview(
        int base, Instant at, String fingerprint, int cases, int unknown, List<ShiftLine> shifts) {

    public long waitingForApproval() {
        return shifts.stream().filter(ShiftLine::needsApproval).count();
    }
}
