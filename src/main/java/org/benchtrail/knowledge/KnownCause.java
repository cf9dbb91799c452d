package org.benchtrail.knowledge;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import org.benchtrail.core.method.Category;
import org.jspecify.annotations.Nullable;

/** A known cause as it stands; every change of it is also an entry of its history. */
@Entity
@Table(name = "known_cause")
class KnownCause {
    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    @Nullable
    Long id;

    String title = "";

    @Enumerated(EnumType.STRING)
    Category category = Category.OTHER;

    @Column(name = "cause_id")
    @Nullable
    String causeId;

    String shows = "";
    String apart = "";
    String cure = "";

    @Enumerated(EnumType.STRING)
    CauseState state = CauseState.DRAFT;

    @Column(name = "merged_into")
    @Nullable
    Long mergedInto;

    int confirmations;
    int measured;

    @Column(name = "last_confirmed")
    @Nullable
    Instant lastConfirmed;

    @Column(name = "confirmed_by")
    @Nullable
    String confirmedBy;

    @Column(updatable = false)
    @Nullable
    Integer ticket;

    @Column(updatable = false)
    Instant proposed = Instant.EPOCH;

    @Column(name = "proposed_by", updatable = false)
    String proposedBy = "";

    int version;
    Instant changed = Instant.EPOCH;

    protected KnownCause() {}

    /** A draft. */
    KnownCause(CauseText text, @Nullable Integer ticket, String by, Instant at) {
        this.ticket = ticket;
        this.proposed = at;
        this.proposedBy = by;
        write(text);
    }

    final void write(CauseText text) {
        title = text.title();
        category = text.category();
        causeId = text.causeId();
        shows = text.shows();
        apart = text.apart();
        cure = text.cure();
    }

    CauseText text() {
        return new CauseText(title, category, causeId, shows, apart, cure);
    }

    long number() {
        return java.util.Objects.requireNonNull(id, "a known cause has a number once it is stored");
    }

    /** As history keeps it. */
    CauseImage image() {
        return new CauseImage(title, category, causeId, shows, apart, cure, state, mergedInto, confirmations);
    }
}
