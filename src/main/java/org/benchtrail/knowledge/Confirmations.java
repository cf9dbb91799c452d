package org.benchtrail.knowledge;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Who found a known cause true, and when. */
@ApplicationScoped
class Confirmations implements PanacheRepositoryBase<CauseConfirmation, Long> {

    void add(KnownCause cause, @Nullable Integer ticket, String who, Instant at, boolean measured) {
        persist(new CauseConfirmation(cause, ticket, who, at, measured));
        recount(cause);
    }

    /** Which cause a ticket confirmed. */
    Optional<Long> of(int ticket) {
        return find("ticket", ticket).firstResultOptional().map(c -> c.cause);
    }

    void withdraw(KnownCause cause, int ticket) {
        delete("ticket", ticket);
        recount(cause);
    }

    void move(KnownCause from, KnownCause to) {
        update("cause = ?1 where cause = ?2", to.number(), from.number());
        recount(from);
        recount(to);
    }

    void move(int ticket, KnownCause to) {
        update("cause = ?1 where ticket = ?2", to.number(), ticket);
    }

    /** Renews what the cause says of how often and when it was found true. */
    void recount(KnownCause cause) {
        cause.confirmations = (int) count("cause", cause.number());
        cause.measured = (int) count("cause = ?1 and measured = true", cause.number());
        Optional<CauseConfirmation> last =
                find("cause = ?1 order by at desc, id desc", cause.number()).firstResultOptional();
        cause.lastConfirmed = last.map(c -> c.at).orElse(null);
        cause.confirmedBy = last.map(c -> c.who).orElse(null);
    }

    /** How it stands apart from any flag: confirmed once somebody other than its author found it true. */
    CauseState settled(KnownCause cause) {
        return count("cause = ?1 and who <> ?2", cause.number(), cause.proposedBy) > 0
                ? CauseState.CONFIRMED
                : CauseState.DRAFT;
    }
}
