package org.benchtrail.people;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumSet;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.platform.Forbidden;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class PermissionsTest {
    /** The table as agreed, written a second time: one column per role in the order of {@link Role}. */
    @ParameterizedTest
    @CsvSource({
        "WORK_TICKETS,    true,  true,  true,  true,  false",
        "SEE_TICKETS,     true,  true,  true,  true,  true",
        "READ_REQUESTERS, true,  true,  true,  true,  false",
        "WAIVE,           false, false, false, true,  false",
        "APPROVE,         false, false, true,  true,  false",
        "SIGN_AS_MENTOR,  false, false, true,  false, false",
        "MANAGE_ACCOUNTS, false, false, false, false, true",
        "OWN_TOKENS,      true,  true,  true,  true,  true",
        "VERIFY_TRAIL,    true,  true,  true,  true,  true",
        "SEE_ALARMS,      false, false, false, true,  true",
        "ADD_DEVICES,     true,  true,  true,  true,  true",
        "KEEP_SITE,       false, false, false, true,  true",
        "SET_POLICIES,    false, false, false, false, true",
        "KEEP_CATALOGUE,  false, false, false, true,  false",
        "PLAN_AUDITS,     false, false, false, true,  false",
        "COACH,           false, false, true,  true,  false",
        "WRITE_PRACTICE,  false, false, true,  true,  false",
        "STATE_TRIALS,    false, false, false, true,  false",
        "SEE_FIGURES,     false, false, false, true,  true",
        "REVIEW,          false, false, false, true,  false",
        "DECIDE_PROPOSALS, false, false, false, true, false",
        "TEND_KNOWLEDGE,  true,  false, true,  true,  false",
        "CURATE_KNOWLEDGE, false, false, false, true, false"
    })
    void table_isAsAgreed(
            Permission permission,
            boolean technician,
            boolean trainee,
            boolean mentor,
            boolean supervisor,
            boolean administrator) {
        assertEquals(technician, allows(permission, Role.TECHNICIAN));
        assertEquals(trainee, allows(permission, Role.TRAINEE));
        assertEquals(mentor, allows(permission, Role.MENTOR));
        assertEquals(supervisor, allows(permission, Role.SUPERVISOR));
        assertEquals(administrator, allows(permission, Role.ADMINISTRATOR));
    }

    @ParameterizedTest
    @EnumSource(Permission.class)
    void noRole_mayNothing_andAllRolesEverything(Permission permission) {
        assertTrue(Permissions.allow(permission, new Actor("all", "All", EnumSet.allOf(Role.class))));
        Actor nobody = new Actor("none", "None", Set.of());
        assertThrows(Forbidden.class, () -> Permissions.require(permission, nobody));
    }

    @Test
    void refusal_namesTheRoles() {
        Actor technician = new Actor("kim", "Kim", Set.of(Role.TECHNICIAN));
        Forbidden refused = assertThrows(Forbidden.class, () -> Permissions.require(Permission.APPROVE, technician));
        assertEquals("Only these roles may approve a plan: mentor, supervisor.", refused.getMessage());
    }

    private static boolean allows(Permission permission, Role role) {
        return Permissions.allow(permission, new Actor("kim", "Kim", Set.of(role)));
    }
}
