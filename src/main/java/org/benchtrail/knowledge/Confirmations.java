package org.benchtrail.knowledge;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Who found a known cause true, and when. One confirmation counts for each person and ticket, and outside a ticket one for each
 * person; none of whoever wrote the words, and none of other words than those that stand.
 */
@ApplicationScoped
class Confirmations implements PanacheRepositoryBase<CauseConfirmation, Long> {
    private final CauseAuthors authors;

    Confirmations(CauseAuthors authors) {
        this.authors = authors;
    }

    void add(KnownCause cause, @Nullable Integer ticket, String who, Instant at, boolean measured) {
        persist(new CauseConfirmation(cause, ticket, who, at, measured));
        recount(cause);
    }

    /** Which cause a ticket confirmed. */
    Optional<Long> of(int ticket) {
        return find("ticket", ticket).firstResultOptional().map(c -> c.cause);
    }

    /** Whose confirmation counts, the first to confirm first. */
    List<String> confirmers(long cause) {
        return list("cause = ?1 and counts = true order by at, id", cause).stream()
                .map(c -> c.who)
                .distinct()
                .toList();
    }

    /** Other words stand: what was found true before was not these. */
    void beginAnew(KnownCause cause) {
        update("counts = false where cause = ?1", cause.number());
        recount(cause);
    }

    void withdraw(KnownCause cause, int ticket) {
        delete("ticket", ticket);
        recount(cause);
    }

    void move(KnownCause from, KnownCause to) {
        update(
                "counts = false where cause = ?1 and ticket is null and who in"
                        + " (select c.who from CauseConfirmation c"
                        + " where c.cause = ?2 and c.ticket is null and c.counts = true)",
                from.number(),
                to.number());
        update("cause = ?1 where cause = ?2", to.number(), from.number());
        leaveOut(to, authors.of(to.number()));
        recount(from);
        recount(to);
    }

    void move(int ticket, KnownCause to) {
        update("cause = ?1 where ticket = ?2", to.number(), ticket);
        leaveOut(to, authors.of(to.number()));
    }

    /** Nobody confirms words of their own. */
    private void leaveOut(KnownCause cause, Collection<String> who) {
        update("counts = false where cause = ?1 and who in ?2", cause.number(), who);
    }

    /** Renews what the cause says of how often and when it was found true. */
    void recount(KnownCause cause) {
        cause.confirmations = (int) count("cause = ?1 and counts = true", cause.number());
        cause.measured = (int) count("cause = ?1 and counts = true and measured = true", cause.number());
        Optional<CauseConfirmation> last = find(
                        "cause = ?1 and counts = true order by at desc, id desc", cause.number())
                .firstResultOptional();
        cause.lastConfirmed = last.map(c -> c.at).orElse(null);
        cause.confirmedBy = last.map(c -> c.who).orElse(null);
    }

    /** How it stands apart from any flag. */
    static CauseState settled(KnownCause cause) {
        return cause.confirmations > 0 ? CauseState.CONFIRMED : CauseState.DRAFT;
    }
}
