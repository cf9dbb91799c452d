package org.benchtrail.people;

import io.vertx.ext.web.RoutingContext;
import jakarta.inject.Singleton;
import java.util.Optional;
import org.benchtrail.core.method.Actor;

/**
 * A second person says who they are for one act, in the sign-in of somebody else, which stays as it is. Wrong tries count as at the
 * sign-in, against the login that was typed: whoever is signed in is not locked by them.
 */
@Singleton
public class Vouching {
    private final SignIn signIn;
    private final SecondFactors factors;
    private final Sessions sessions;

    Vouching(SignIn signIn, SecondFactors factors, Sessions sessions) {
        this.signIn = signIn;
        this.factors = factors;
        this.sessions = sessions;
    }

    /** What is told of any refusal. */
    public static String refused() {
        return "Login, password or code is not right, or the account is closed. After several wrong tries no more are taken for a"
                + " while.";
    }

    /**
     * That person, for this act alone; empty if the password, or the code of a second factor that the account has, is not right. Not
     * to be called within a transaction: hashing is slow on purpose.
     *
     * @param code of the second factor; empty if the account has none
     */
    public Optional<Actor> of(String login, String password, String code, RoutingContext request) {
        return signIn.byPassword(login, password, sessions.visit(request))
                .filter(person ->
                        !factors.isAsked(person) || factors.takes(person.actor().account(), code))
                .map(SignedIn::actor);
    }
}
