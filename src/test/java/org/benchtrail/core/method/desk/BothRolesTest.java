package org.benchtrail.core.method.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import org.benchtrail.BesideOthers;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.junit.jupiter.api.Test;

/** Every way in which two persons can have the two roles, before and now. */
@BesideOthers
class BothRolesTest {
    private static final List<Set<Role>> ROLES = List.of(
            Set.of(), Set.of(Role.ADMINISTRATOR), Set.of(Role.SUPERVISOR), Set.of(Role.ADMINISTRATOR, Role.SUPERVISOR));

    private static boolean had(Set<Role> then, Set<Role> now, Role role) {
        return then.contains(role) && now.contains(role);
    }

    private static String refusal(
            String other, Set<Role> oneThen, Set<Role> one, Set<Role> otherThen, Set<Role> otherNow) {
        return BothRoles.refusal(new Actor("one", "One", one), oneThen, new Actor(other, "Other", otherNow), otherThen);
    }

    @Test
    void oneIsAdministrator_theOtherSupervisor_beforeAndNow() {
        int allowed = 0;
        for (Set<Role> oneThen : ROLES) {
            for (Set<Role> one : ROLES) {
                for (Set<Role> otherThen : ROLES) {
                    for (Set<Role> other : ROLES) {
                        boolean fits = (had(oneThen, one, Role.ADMINISTRATOR) && had(otherThen, other, Role.SUPERVISOR))
                                || (had(oneThen, one, Role.SUPERVISOR) && had(otherThen, other, Role.ADMINISTRATOR));
                        assertEquals(
                                fits,
                                refusal("other", oneThen, one, otherThen, other).isEmpty());
                        allowed += fits ? 1 : 0;
                        assertTrue(refusal("one", oneThen, one, otherThen, other)
                                .startsWith("You proposed this yourself"));
                    }
                }
            }
        }
        // by hand: of the 16 cases of a person 1 has both roles before and now, 3 the one alone, 3 the other alone
        assertEquals(2 * 3 * 3 + 2 * (3 + 3) + 1, allowed);
    }
}
