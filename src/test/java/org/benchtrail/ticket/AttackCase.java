package org.benchtrail.ticket;

import jakarta.inject.Inject;
import org.benchtrail.people.PeopleActs;
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
}
