package org.benchtrail.people;

import io.quarkus.hibernate.orm.panache.PanacheRepository;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.List;

/** The rows of absences; those that were withdrawn are never among them. */
@ApplicationScoped
class AbsenceRows implements PanacheRepository<Absence> {
    /** Those that go on or are to come, the first one first. */
    List<Absence> from(String account, Instant now) {
        return list("account = ?1 and withdrawn is null and ends > ?2 order by begins", account, now);
    }

    /** Everybody's at that moment. */
    List<Absence> at(Instant now) {
        return list("withdrawn is null and begins <= ?1 and ends > ?1 order by begins, id", now);
    }
}
