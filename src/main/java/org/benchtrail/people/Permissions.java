package org.benchtrail.people;

import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.platform.Forbidden;

/** The one table of who may do what; pages, API and acts all ask here. */
public final class Permissions {
    private static final Set<Role> ALL = EnumSet.allOf(Role.class);

    private static final Map<Permission, Set<Role>> TABLE = new EnumMap<>(Map.ofEntries(
            Map.entry(Permission.WORK_TICKETS, EnumSet.of(Role.TECHNICIAN, Role.TRAINEE, Role.MENTOR, Role.SUPERVISOR)),
            Map.entry(Permission.SEE_TICKETS, ALL),
            Map.entry(
                    Permission.READ_REQUESTERS,
                    EnumSet.of(Role.TECHNICIAN, Role.TRAINEE, Role.MENTOR, Role.SUPERVISOR)),
            Map.entry(Permission.WAIVE, EnumSet.of(Role.SUPERVISOR)),
            Map.entry(Permission.APPROVE, EnumSet.of(Role.SUPERVISOR, Role.MENTOR)),
            Map.entry(Permission.SIGN_AS_MENTOR, EnumSet.of(Role.MENTOR)),
            Map.entry(Permission.KEEP_LIMITS, EnumSet.of(Role.SUPERVISOR)),
            Map.entry(
                    Permission.ADD_DEVICES,
                    EnumSet.of(Role.TECHNICIAN, Role.TRAINEE, Role.MENTOR, Role.SUPERVISOR, Role.ADMINISTRATOR)),
            Map.entry(Permission.KEEP_SITE, EnumSet.of(Role.SUPERVISOR, Role.ADMINISTRATOR)),
            Map.entry(Permission.SET_POLICIES, EnumSet.of(Role.ADMINISTRATOR)),
            Map.entry(Permission.MANAGE_ACCOUNTS, EnumSet.of(Role.ADMINISTRATOR)),
            Map.entry(Permission.KEEP_CATALOGUE, EnumSet.of(Role.SUPERVISOR)),
            Map.entry(Permission.DECIDE_PROPOSALS, EnumSet.of(Role.SUPERVISOR)),
            Map.entry(Permission.TEND_KNOWLEDGE, EnumSet.of(Role.TECHNICIAN, Role.MENTOR, Role.SUPERVISOR)),
            Map.entry(Permission.CURATE_KNOWLEDGE, EnumSet.of(Role.SUPERVISOR)),
            Map.entry(Permission.PLAN_AUDITS, EnumSet.of(Role.SUPERVISOR)),
            Map.entry(Permission.REVIEW, EnumSet.of(Role.SUPERVISOR)),
            Map.entry(Permission.COACH, EnumSet.of(Role.SUPERVISOR, Role.MENTOR)),
            Map.entry(Permission.STATE_TRIALS, EnumSet.of(Role.SUPERVISOR)),
            Map.entry(Permission.WRITE_PRACTICE, EnumSet.of(Role.SUPERVISOR, Role.MENTOR)),
            Map.entry(Permission.SEE_FIGURES, EnumSet.of(Role.SUPERVISOR, Role.ADMINISTRATOR)),
            Map.entry(Permission.OWN_TOKENS, ALL),
            Map.entry(Permission.SEE_ALARMS, EnumSet.of(Role.SUPERVISOR, Role.ADMINISTRATOR)),
            Map.entry(Permission.KEEP_LOG, EnumSet.of(Role.ADMINISTRATOR)),
            Map.entry(Permission.MEND_TRAILS, EnumSet.of(Role.SUPERVISOR, Role.ADMINISTRATOR)),
            Map.entry(Permission.VERIFY_TRAIL, ALL)));

    private Permissions() {}

    /** The roles that have {@code permission}; never empty. */
    public static Set<Role> roles(Permission permission) {
        return Collections.unmodifiableSet(TABLE.get(permission));
    }

    /** Whether any role of {@code actor} has {@code permission}. */
    public static boolean allow(Permission permission, Actor actor) {
        return !Collections.disjoint(roles(permission), actor.roles());
    }

    /**
     * Lets nobody pass who lacks {@code permission}.
     *
     * @throws Forbidden if no role of {@code actor} has it
     */
    public static void require(Permission permission, Actor actor) {
        if (!allow(permission, actor)) {
            throw new Forbidden("Only these roles may " + permission.words() + ": " + names(permission) + ".");
        }
    }

    private static String names(Permission permission) {
        return Arrays.stream(Role.values())
                .filter(roles(permission)::contains)
                .map(role -> role.name().toLowerCase(java.util.Locale.ROOT))
                .collect(Collectors.joining(", "));
    }
}
