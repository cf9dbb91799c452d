package org.benchtrail.core.site;

import org.benchtrail.core.Invalid;

/**
 * How soon a ticket is to be answered and fixed.
 *
 * @param response working minutes until somebody has it, 1 to {@code fix}
 * @param fix working minutes until it is closed, at most 525,600
 */
public record Target(int response, int fix) {
    /** A year round the clock, in minutes. */
    private static final int LONGEST = 525_600;

    /** @throws Invalid on {@code response} or {@code fix} */
    public Target {
        new Invalid.Collector()
                .require(fix >= 1 && fix <= LONGEST, "fix", "Give the time to fix as 1 to 525,600 working minutes.")
                .require(
                        response >= 1 && response <= Math.max(1, fix),
                        "response",
                        "Give the time to answer as 1 minute or more, and no more than the time to fix.")
                .throwIfAny();
    }
}
