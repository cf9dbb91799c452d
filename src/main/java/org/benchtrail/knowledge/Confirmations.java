package org.benchtrail.knowledge;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Who found a known cause true, and when. */
@ApplicationScoped
class Confirmations {
    private final EntityManager database;

    Confirmations(EntityManager database) {
        this.database = database;
    }

    void add(KnownCause cause, @Nullable Integer ticket, String who, Instant at, boolean measured) {
        database.createNativeQuery("insert into known_cause_confirmation (cause, ticket, at, who, measured)"
                        + " values (?1, cast(?2 as integer), ?3, ?4, ?5)")
                .setParameter(1, cause.number())
                .setParameter(2, ticket)
                .setParameter(3, at)
                .setParameter(4, who)
                .setParameter(5, measured)
                .executeUpdate();
        count(cause);
    }

    /** Which cause a ticket confirmed. */
    Optional<Long> of(int ticket) {
        List<?> found = database.createNativeQuery("select cause from known_cause_confirmation where ticket = ?1")
                .setParameter(1, ticket)
                .getResultList();
        return found.stream().map(n -> ((Number) n).longValue()).findFirst();
    }

    void withdraw(KnownCause cause, int ticket) {
        database.createNativeQuery("delete from known_cause_confirmation where ticket = ?1")
                .setParameter(1, ticket)
                .executeUpdate();
        count(cause);
    }

    void move(KnownCause from, KnownCause to) {
        database.createNativeQuery("update known_cause_confirmation set cause = ?1 where cause = ?2")
                .setParameter(1, to.number())
                .setParameter(2, from.number())
                .executeUpdate();
        count(from);
        count(to);
    }

    void move(int ticket, KnownCause to) {
        database.createNativeQuery("update known_cause_confirmation set cause = ?1 where ticket = ?2")
                .setParameter(1, to.number())
                .setParameter(2, ticket)
                .executeUpdate();
    }

    /** Renews what the cause says of how often and when it was found true. */
    void count(KnownCause cause) {
        Object[] counted = (Object[]) database.createNativeQuery(
                        "select count(*), count(*) filter (where measured) from known_cause_confirmation where cause = ?1")
                .setParameter(1, cause.number())
                .getSingleResult();
        cause.confirmations = ((Number) counted[0]).intValue();
        cause.measured = ((Number) counted[1]).intValue();
        List<Last> last = database.createNativeQuery(
                        "select at, who from known_cause_confirmation where cause = ?1 order by at desc, id desc limit 1",
                        Object[].class)
                .setParameter(1, cause.number())
                .getResultStream()
                .map(row -> last((Object[]) row))
                .toList();
        cause.lastConfirmed = last.isEmpty() ? null : last.get(0).at();
        cause.confirmedBy = last.isEmpty() ? null : last.get(0).who();
    }

    /** How it stands apart from any flag: confirmed once somebody other than its author found it true. */
    CauseState settled(KnownCause cause) {
        Object others = database.createNativeQuery(
                        "select count(*) from known_cause_confirmation where cause = ?1 and who <> ?2")
                .setParameter(1, cause.number())
                .setParameter(2, cause.proposedBy)
                .getSingleResult();
        return ((Number) others).longValue() > 0 ? CauseState.CONFIRMED : CauseState.DRAFT;
    }

    private record Last(Instant at, String who) {}

    private static Last last(Object[] row) {
        return new Last((Instant) row[0], (String) row[1]);
    }
}
