package org.benchtrail.knowledge;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;

/** That somebody wrote words of a known cause, or worked on the ticket that they came from. */
@Entity
@Immutable
@Table(name = "known_cause_author")
class CauseAuthor {
    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    @Nullable
    Long id;

    @Column(updatable = false)
    long cause;

    @Column(updatable = false)
    String who = "";

    protected CauseAuthor() {}

    CauseAuthor(long cause, String who) {
        this.cause = cause;
        this.who = who;
    }
}
