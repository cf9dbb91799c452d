package org.benchtrail.people;

import java.util.Arrays;
import java.util.Collection;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Role;

/** Roles as they are written on pages: small letters. */
final class RoleNames {
    /** As lists of roles are noted, such as {@code [MENTOR, SUPERVISOR]}. */
    private static final Pattern LISTED =
            listed(Arrays.stream(Role.values()).map(Role::name).collect(Collectors.joining("|", "(?:", ")")));

    private RoleNames() {}

    private static Pattern listed(String role) {
        return Pattern.compile("\\[(" + role + "(?:, " + role + ")*)]");
    }

    static String of(Role role) {
        return role.name().toLowerCase(Locale.ROOT);
    }

    static String join(Set<Role> roles) {
        return roles.stream().sorted().map(RoleNames::of).collect(Collectors.joining(", "));
    }

    /** A note of accounts, with each list of roles in it as it is written on pages. */
    static String inWords(String note) {
        return LISTED.matcher(note).replaceAll(listed -> listed.group(1).toLowerCase(Locale.ROOT));
    }

    /** @throws Invalid if a name is no role */
    static Set<Role> parse(Collection<String> names) {
        Set<Role> roles = EnumSet.noneOf(Role.class);
        Invalid.Collector problems = new Invalid.Collector();
        for (String name : names) {
            Optional<Role> role =
                    Arrays.stream(Role.values()).filter(r -> of(r).equals(name)).findFirst();
            role.ifPresent(roles::add);
            problems.require(role.isPresent(), "roles", "Choose roles out of " + join(EnumSet.allOf(Role.class)) + ".");
        }
        problems.throwIfAny();
        return roles;
    }
}
