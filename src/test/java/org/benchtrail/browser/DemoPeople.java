package org.benchtrail.browser;

import java.util.Set;
import org.benchtrail.core.method.Role;
import org.benchtrail.demo.Scenarios;
import org.benchtrail.people.PeopleActs;

/** The people of the demo, as the journeys meet them. */
public final class DemoPeople {
    private DemoPeople() {}

    public static void ensure(PeopleActs accounts) {
        accounts.ensureAccount("ines", "Ines Harrow", Set.of(Role.TECHNICIAN), Scenarios.DEMO_PASSWORD);
        accounts.ensureAccount("tomasz", "Tomasz Birk", Set.of(Role.TRAINEE), Scenarios.DEMO_PASSWORD);
        accounts.ensureAccount("ruth", "Ruth Calloway", Set.of(Role.TECHNICIAN, Role.MENTOR), Scenarios.DEMO_PASSWORD);
        accounts.ensureAccount("omar", "Omar Vance", Set.of(Role.SUPERVISOR), Scenarios.DEMO_PASSWORD);
        accounts.ensureAccount("wilma", "Wilma Ostrey", Set.of(Role.SUPERVISOR), Scenarios.DEMO_PASSWORD);
        accounts.ensureAccount("lena", "Lena Foss", Set.of(Role.ADMINISTRATOR), Scenarios.DEMO_PASSWORD);
    }
}
