package org.benchtrail.ticket;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.sql.SQLException;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.Causes;
import org.junit.jupiter.api.BeforeEach;

/** What every attack begins with: a site of people who try it. */
abstract class AttackCase {
    @Inject
    PeopleActs people;

    AttackSite site;

    @BeforeEach
    void people() {
        site = new AttackSite(people);
    }

    /** The database refuses the rows of that table, which has some, to whoever forgot to take on the account that is its own. */
    static void assertKeptApart(EntityManager database, String table) {
        RuntimeException refused = assertThrows(
                RuntimeException.class,
                () -> QuarkusTransaction.requiringNew()
                        .call(() -> database.createNativeQuery("select count(*) from " + table)
                                .getSingleResult()),
                table);
        assertTrue(
                Causes.of(refused).stream()
                        .anyMatch(one -> one instanceof SQLException sql && "42501".equals(sql.getSQLState())),
                refused::toString);
    }
}
