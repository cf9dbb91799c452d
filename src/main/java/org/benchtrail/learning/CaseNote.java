package org.benchtrail.learning;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import org.benchtrail.core.method.TicketNumber;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;

/** One line of what was done to cases; written once. */
@Entity
@Immutable
@Table(name = "shop_case_record")
class CaseNote {
    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    @Nullable
    Long id;

    @Column(updatable = false)
    Instant at = Instant.EPOCH;

    @Column(updatable = false)
    String who = "";

    @Column(updatable = false)
    String what = "";

    @Column(updatable = false)
    int ticket;

    @Column(updatable = false)
    String detail = "";

    protected CaseNote() {}

    CaseNote(Instant at, String who, String what, TicketNumber ticket, String detail) {
        this.at = at;
        this.who = who;
        this.what = what;
        this.ticket = ticket.serial();
        this.detail = detail;
    }
}
