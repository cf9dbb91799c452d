package org.benchtrail.proposals;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * A proposal as others see it.
 *
 * @param what would be changed, in one line
 * @param note why, in the proposer's words
 * @param waitsFor who can confirm it, and what to do if nobody can; empty once it is decided
 * @param answer why it was declined
 * @param made the page that shows what was made; null unless it is confirmed
 */
public record ProposalView(
        long id,
        String kind,
        String what,
        String note,
        String proposedBy,
        Instant proposedAt,
        ProposalState state,
        String waitsFor,
        @Nullable String decidedBy,
        @Nullable Instant decidedAt,
        @Nullable String answer,
        @Nullable String made) {

    static ProposalView of(Proposal p, String waitsFor) {
        return new ProposalView(
                p.number(),
                p.kind,
                p.what,
                p.note,
                p.proposedBy,
                p.proposedAt,
                p.state,
                waitsFor,
                p.decidedBy,
                p.decidedAt,
                p.answer,
                p.made);
    }
}
