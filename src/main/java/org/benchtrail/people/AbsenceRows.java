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

    /** Accounts that are away and whose place that person takes, by login. */
    List<String> standsInOf(String person, Instant now) {
        return getEntityManager()
                .createNativeQuery("select stands_in_for(:person, :now) as account order by account", String.class)
                .setParameter("person", person)
                .setParameter("now", now)
                .getResultList();
    }

    /** Everybody's at that moment. */
    List<Absence> at(Instant now) {
        return list("withdrawn is null and begins <= ?1 and ends > ?1 order by begins, id", now);
    }
}
