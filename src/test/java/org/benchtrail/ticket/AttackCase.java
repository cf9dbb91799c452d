package org.benchtrail.ticket;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import org.benchtrail.people.PeopleActs;
import org.benchtrail.platform.sql.NoRight;
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
        NoRight.assertRefused(() -> QuarkusTransaction.requiringNew()
                .call(() -> database.createNativeQuery("select count(*) from " + table)
                        .getSingleResult()));
    }
}
