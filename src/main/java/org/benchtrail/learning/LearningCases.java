package org.benchtrail.learning;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.LockModeType;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.benchtrail.core.method.TicketNumber;

/** The stored cases, and the record of what was done to them. Runs within the caller's transaction. */
@ApplicationScoped
class LearningCases implements PanacheRepositoryBase<LearningCase, Long> {

    /** The latest closing of the ticket, which nobody else can judge until the transaction ends. */
    Optional<LearningCase> latest(TicketNumber ticket) {
        return find("ticket = ?1 order by closedAt desc", ticket.serial())
                .withLock(LockModeType.PESSIMISTIC_WRITE)
                .firstResultOptional();
    }

    /** Longest closed first, after that id. */
    List<LearningCase> waiting(Instant closedAfter, long idAfter, int most) {
        return find(
                        "state = ?1 and (closedAt > ?2 or (closedAt = ?2 and id > ?3)) order by closedAt, id",
                        CaseState.WAITING,
                        closedAfter,
                        idAfter)
                .range(0, most - 1)
                .list();
    }

    long count(CaseState state) {
        return count("state", state);
    }

    /** Judged ones, newest first, before that id. */
    List<LearningCase> judged(CaseState state, long before, int most) {
        return find("state = ?1 and id < ?2 order by id desc", state, before)
                .range(0, most - 1)
                .list();
    }

    /** Every closing of these tickets, in their order. */
    List<LearningCase> of(Collection<Integer> serials) {
        return serials.isEmpty() ? List.of() : list("ticket in ?1 order by closedAt, id", serials);
    }

    /** All that count, by id. */
    List<AcceptedCase> accepted() {
        return read(list("state = ?1 order by id", CaseState.ACCEPTED));
    }

    /** Those with these ids, also if they were withdrawn since. */
    List<AcceptedCase> withIds(Collection<Long> ids) {
        return read(list("id in ?1 and acceptedBy is not null order by id", ids));
    }

    private static List<AcceptedCase> read(List<LearningCase> rows) {
        return rows.stream().map(LearningCase::accepted).toList();
    }

    /** Writes down for good what was done. */
    void note(CaseNote done) {
        getEntityManager().persist(done);
    }
}
