package org.benchtrail.learning;

import static java.util.Objects.requireNonNull;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import org.benchtrail.core.diagnosis.ClosedCase;
import org.benchtrail.core.learning.TicketCase;
import org.benchtrail.core.method.TicketNumber;
import org.jspecify.annotations.Nullable;

/** One closing of a ticket, and what became of it as a case. */
@Entity
@Table(name = "shop_case")
class LearningCase {
    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    @Nullable
    Long id;

    @Column(updatable = false)
    int ticket;

    @Column(name = "closed_at", updatable = false)
    Instant closedAt = Instant.EPOCH;

    @Enumerated(EnumType.STRING)
    CaseState state = CaseState.WAITING;

    @Nullable
    String category;

    @Nullable
    String cause;

    @Column(name = "cause_words")
    @Nullable
    String causeWords;

    @Nullable
    String technician;

    @Nullable
    String site;

    @Enumerated(EnumType.STRING)
    ClosedCase.@Nullable Confirmation confirmation;

    @Nullable
    String observations;

    @Nullable
    String forecast;

    @Column(name = "accepted_by")
    @Nullable
    String acceptedBy;

    @Column(name = "accepted_at")
    @Nullable
    Instant acceptedAt;

    @Column(name = "withdrawn_by")
    @Nullable
    String withdrawnBy;

    @Column(name = "withdrawn_at")
    @Nullable
    Instant withdrawnAt;

    @Nullable
    String reason;

    protected LearningCase() {}

    LearningCase(int ticket, Instant closedAt) {
        this.ticket = ticket;
        this.closedAt = closedAt;
    }

    void accept(TicketCase made, String by, Instant at) {
        state = CaseState.ACCEPTED;
        category = made.category();
        cause = made.cause();
        causeWords = made.causeWords();
        technician = made.technician();
        site = made.site();
        confirmation = made.confirmation();
        observations = CaseColumns.write(made.seen());
        forecast = made.shown() == null ? null : CaseColumns.write(made.shown());
        acceptedBy = by;
        acceptedAt = at;
        withdrawnBy = null;
        withdrawnAt = null;
        reason = null;
    }

    void leaveOut(String why) {
        state = CaseState.LEFT_OUT;
        reason = why;
    }

    void withdraw(String why, String by, Instant at) {
        state = CaseState.WITHDRAWN;
        withdrawnBy = by;
        withdrawnAt = at;
        reason = why;
    }

    /** What was accepted; only for a row that was. */
    AcceptedCase accepted() {
        TicketCase read = new TicketCase(
                requireNonNull(category),
                requireNonNull(cause),
                requireNonNull(causeWords),
                requireNonNull(technician),
                site,
                requireNonNull(confirmation),
                closedAt,
                CaseColumns.seen(requireNonNull(observations)),
                forecast == null ? null : CaseColumns.shown(forecast));
        return new AcceptedCase(id(), number(), read, requireNonNull(acceptedBy));
    }

    /** Only for a row that is stored. */
    long id() {
        return requireNonNull(id);
    }

    TicketNumber number() {
        return new TicketNumber(ticket);
    }
}
