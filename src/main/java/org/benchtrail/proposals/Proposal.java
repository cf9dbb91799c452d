package org.benchtrail.proposals;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** A proposed change. What was proposed is never altered, only how it ended is written once. */
@Entity
@Table(name = "proposal")
class Proposal {
    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    @Nullable
    Long id;

    @Column(updatable = false)
    String kind = "";

    @Column(updatable = false)
    String what = "";

    @Column(updatable = false)
    String change = "";

    @Column(updatable = false)
    String note = "";

    @Column(name = "proposed_by", updatable = false)
    String proposedBy = "";

    @Column(name = "proposed_at", updatable = false)
    Instant proposedAt = Instant.EPOCH;

    @Enumerated(EnumType.STRING)
    ProposalState state = ProposalState.OPEN;

    @Column(name = "decided_by")
    @Nullable
    String decidedBy;

    @Column(name = "decided_at")
    @Nullable
    Instant decidedAt;

    @Nullable
    String answer;

    @Nullable
    String made;

    long number() {
        return Objects.requireNonNull(id, "a proposal has a number once it is stored");
    }

    void end(ProposalState how, String by, Instant at) {
        state = how;
        decidedBy = by;
        decidedAt = at;
    }
}
