package org.benchtrail.people;

import io.quarkus.security.UnauthorizedException;
import io.quarkus.security.identity.SecurityIdentity;
import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Named;
import java.time.ZoneId;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.jspecify.annotations.Nullable;

/** The person behind the present request; in templates {@code inject:current}. */
@RequestScoped
@Named("current")
public class CurrentActor {
    static final String ATTRIBUTE = "benchtrail.signed-in";

    private final SecurityIdentity identity;

    CurrentActor(SecurityIdentity identity) {
        this.identity = identity;
    }

    public boolean signedIn() {
        return person() != null;
    }

    /**
     * Who acts.
     *
     * @throws UnauthorizedException if nobody is signed in
     */
    public Actor actor() {
        return required().actor();
    }

    /** The zone in which this person reads dates; UTC if nobody is signed in. */
    public ZoneId zone() {
        SignedIn person = person();
        return person == null ? ZoneId.of("UTC") : person.zone();
    }

    /** The name to show; empty if nobody is signed in. */
    public String name() {
        SignedIn person = person();
        return person == null ? "" : person.actor().name();
    }

    /** Whether the person may do {@code permission}; false if nobody is signed in. */
    public boolean may(Permission permission) {
        SignedIn person = person();
        return person != null && Permissions.allow(permission, person.actor());
    }

    /** Whether forecasts are made, or read as a mentor. */
    public boolean seesForecasts() {
        return signedIn() && (actor().is(Role.TRAINEE) || actor().is(Role.MENTOR));
    }

    /** Whether this person writes practice jobs: their texts hold what is true of the devices. */
    public boolean mayWritePractice() {
        return may(Permission.WRITE_PRACTICE) && !actor().is(Role.TRAINEE);
    }

    /** For the navigation: whether tickets are this person's to open and work. */
    public boolean mayWorkTickets() {
        return may(Permission.WORK_TICKETS);
    }

    /** Whether this person assigns tickets outright. */
    public boolean assigns() {
        SignedIn person = person();
        return person != null && person.actor().is(Role.SUPERVISOR);
    }

    /** For the navigation: whether the page of accounts opens to this person. */
    public boolean mayManageAccounts() {
        return may(Permission.MANAGE_ACCOUNTS);
    }

    /** For the navigation: whether cases are this person's to judge. */
    public boolean mayKeepCatalogue() {
        return may(Permission.KEEP_CATALOGUE);
    }

    /** For the navigation: whether this person confirms what other supervisors propose. */
    public boolean mayDecideProposals() {
        return may(Permission.DECIDE_PROPOSALS);
    }

    /** For the navigation: whether this person audits. */
    public boolean mayReview() {
        return may(Permission.REVIEW);
    }

    /** For the navigation: whether figures over all tickets open to this person. */
    public boolean maySeeFigures() {
        return may(Permission.SEE_FIGURES);
    }

    /** For the foot of each page: whether this person answers for the record. */
    public boolean maySeeAlarms() {
        return may(Permission.SEE_ALARMS);
    }

    /** The sign-in behind the request; 0 if it is none. */
    long session() {
        return required().session();
    }

    /** What the token behind the request may be used for; everything if it is a person's own sign-in. */
    Set<TokenScope> scopes() {
        return required().scopes();
    }

    /** What the forms of this sign-in carry. */
    String formToken() {
        return required().formToken();
    }

    boolean hasSecondFactor() {
        return required().secondFactor();
    }

    private SignedIn required() {
        SignedIn person = person();
        if (person == null) {
            throw new UnauthorizedException();
        }
        return person;
    }

    private @Nullable SignedIn person() {
        return identity.getAttribute(ATTRIBUTE);
    }
}
