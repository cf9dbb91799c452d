package org.benchtrail.learning;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * A judged case.
 *
 * @param category id in the catalogue; null for one that was left out
 * @param cause id in the catalogue, or UNLISTED
 * @param reason why it was left out or withdrawn
 */
public record CaseView(
        String ticket,
        CaseState state,
        Instant closed,
        @Nullable String category,
        @Nullable String cause,
        @Nullable String causeWords,
        @Nullable String technician,
        @Nullable String site,
        @Nullable String confirmation,
        @Nullable String acceptedBy,
        @Nullable Instant acceptedAt,
        @Nullable String withdrawnBy,
        @Nullable String reason) {

    static CaseView of(LearningCase c) {
        return new CaseView(
                c.number().toString(),
                c.state,
                c.closedAt,
                c.category,
                c.cause,
                c.causeWords,
                c.technician,
                c.site,
                c.confirmation == null ? null : c.confirmation.name(),
                c.acceptedBy,
                c.acceptedAt,
                c.withdrawnBy,
                c.reason);
    }
}
