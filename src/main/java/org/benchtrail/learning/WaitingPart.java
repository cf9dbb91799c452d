package org.benchtrail.learning;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A stretch of the waiting tickets, the longest closed first.
 *
 * @param next where the next stretch begins; null on the last
 * @param total how many wait in all
 */
public record WaitingPart(
        List<WaitingView> tickets, @Nullable String next, long total) {}
