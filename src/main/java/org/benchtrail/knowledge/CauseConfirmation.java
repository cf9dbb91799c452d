package org.benchtrail.knowledge;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/** That somebody found a known cause true. */
@Entity
@Table(name = "known_cause_confirmation")
class CauseConfirmation {
    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    @Nullable
    Long id;

    /** Number of the known cause; another one after a merge or a split. */
    long cause;

    /** Serial of the ticket that showed it; null if it was found true outside one. */
    @Column(updatable = false)
    @Nullable
    Integer ticket;

    @Column(updatable = false)
    Instant at = Instant.EPOCH;

    @Column(updatable = false)
    String who = "";

    @Column(updatable = false)
    boolean measured;

    /** Whether it is of the words as they stand, and of somebody who did not write them. */
    boolean counts = true;

    protected CauseConfirmation() {}

    CauseConfirmation(KnownCause cause, @Nullable Integer ticket, String who, Instant at, boolean measured) {
        this.cause = cause.number();
        this.ticket = ticket;
        this.who = who;
        this.at = at;
        this.measured = measured;
    }
}
