package org.benchtrail.people;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumSet;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.jspecify.annotations.Nullable;

/** One person's account. State only; the rules are in {@link PeopleActs} and {@link SignIn}. */
@Entity
class Account {
    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    @Nullable
    Long id;

    @Column(updatable = false)
    String login = "";

    @Column(name = "display_name")
    String displayName = "";

    String[] roles = {};

    @Column(name = "password_hash")
    String passwordHash = "";

    String zone = "UTC";

    /** Account of the mentor of a trainee. */
    @Nullable
    String mentor;

    boolean active = true;

    /** Until then an administrator is shown that tries from somewhere are refused. */
    @Column(name = "locked_until")
    @Nullable
    Instant lockedUntil;

    @Column(name = "session_version")
    int sessionVersion = 1;

    @Column(name = "created_at", updatable = false)
    Instant createdAt = Instant.EPOCH;

    Set<Role> roles() {
        Set<Role> set = EnumSet.noneOf(Role.class);
        Arrays.stream(roles).map(Role::valueOf).forEach(set::add);
        return Collections.unmodifiableSet(set);
    }

    void roles(Set<Role> set) {
        roles = set.stream().sorted().map(Role::name).toArray(String[]::new);
    }

    ZoneId zoneId() {
        return ZoneId.of(zone);
    }

    Actor actor() {
        return new Actor(login, displayName, roles());
    }

    boolean isLocked(Instant now) {
        return lockedUntil != null && now.isBefore(lockedUntil);
    }

    /** Ends every sign-in made before now. */
    void endSessions() {
        sessionVersion++;
    }

    void forgetFailures() {
        lockedUntil = null;
    }

    SignedIn signedIn() {
        return new SignedIn(
                id == null ? 0 : id, sessionVersion, 0, actor(), zoneId(), false, "", EnumSet.allOf(TokenScope.class));
    }

    AccountView view(Instant now) {
        return new AccountView(login, displayName, roles(), zone, active, isLocked(now), createdAt);
    }
}
