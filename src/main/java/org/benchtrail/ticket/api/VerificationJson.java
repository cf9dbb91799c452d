package org.benchtrail.ticket.api;

import org.benchtrail.trail.Verification;
import org.jspecify.annotations.Nullable;

/**
 * Whether a trail holds.
 *
 * @param entries how many were read
 * @param brokenAt number of the first entry that does not hold; null if all do
 */
public record VerificationJson(
        int entries, boolean holds, @Nullable Integer brokenAt, String sentence) {
    static VerificationJson of(Verification v) {
        return new VerificationJson(v.entries(), v.holds(), v.brokenAt(), v.sentence());
    }
}
