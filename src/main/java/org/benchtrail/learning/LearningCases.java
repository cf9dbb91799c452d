package org.benchtrail.learning;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.benchtrail.core.method.TicketNumber;

/** The stored cases, and the record of what was done to them. Runs within the caller's transaction. */
@ApplicationScoped
class LearningCases {
    private final EntityManager database;
    private final Clock clock;

    LearningCases(EntityManager database, Clock clock) {
        this.database = database;
        this.clock = clock;
    }

    /** To the microsecond, which is what a column keeps. */
    Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }

    void add(LearningCase row) {
        database.persist(row);
    }

    /** The latest closing of the ticket, which nobody else can judge until the transaction ends. */
    Optional<LearningCase> latest(TicketNumber ticket) {
        return database.createQuery("from LearningCase where ticket = ?1 order by closedAt desc", LearningCase.class)
                .setParameter(1, ticket.serial())
                .setMaxResults(1)
                .setLockMode(LockModeType.PESSIMISTIC_WRITE)
                .getResultStream()
                .findFirst();
    }

    /** Longest closed first, after that id. */
    List<LearningCase> waiting(Instant closedAfter, long idAfter, int most) {
        return database.createQuery(
                        "from LearningCase where state = ?1 and (closedAt > ?2 or (closedAt = ?2 and id > ?3)) order by closedAt, id",
                        LearningCase.class)
                .setParameter(1, CaseState.WAITING)
                .setParameter(2, closedAfter)
                .setParameter(3, idAfter)
                .setMaxResults(most)
                .getResultList();
    }

    long count(CaseState state) {
        return database.createQuery("select count(*) from LearningCase where state = ?1", Long.class)
                .setParameter(1, state)
                .getSingleResult();
    }

    /** Judged ones, newest first, before that id. */
    List<LearningCase> judged(CaseState state, long before, int most) {
        return database.createQuery(
                        "from LearningCase where state = ?1 and id < ?2 order by id desc", LearningCase.class)
                .setParameter(1, state)
                .setParameter(2, before)
                .setMaxResults(most)
                .getResultList();
    }

    /** All that count, by id. */
    List<AcceptedCase> accepted() {
        return database.createQuery("from LearningCase where state = ?1 order by id", LearningCase.class)
                .setParameter(1, CaseState.ACCEPTED)
                .getResultStream()
                .map(LearningCase::accepted)
                .toList();
    }

    /** Those with these ids, also if they were withdrawn since. */
    List<AcceptedCase> withIds(Collection<Long> ids) {
        return database.createQuery(
                        "from LearningCase where id in ?1 and acceptedBy is not null order by id", LearningCase.class)
                .setParameter(1, ids)
                .getResultStream()
                .map(LearningCase::accepted)
                .toList();
    }

    void note(String who, String what, TicketNumber ticket, String detail) {
        database.createNativeQuery(
                        "insert into shop_case_record (at, who, what, ticket, detail) values (?, ?, ?, ?, ?)")
                .setParameter(1, now())
                .setParameter(2, who)
                .setParameter(3, what)
                .setParameter(4, ticket.serial())
                .setParameter(5, detail)
                .executeUpdate();
    }
}
