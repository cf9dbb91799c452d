package org.benchtrail.people;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.platform.Html;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** One's own account: password, time zone, tokens for programs. */
@Path("/me")
@Authenticated
public class MePage {
    private static final DateTimeFormatter WHEN = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm VV", Locale.ROOT);

    private final PeopleActs acts;
    private final CurrentActor current;
    private final SignIn signIn;
    private final Sessions sessions;
    private final Clock clock;

    MePage(PeopleActs acts, CurrentActor current, SignIn signIn, Sessions sessions, Clock clock) {
        this.acts = acts;
        this.current = current;
        this.signIn = signIn;
        this.sessions = sessions;
        this.clock = clock;
    }

    @CheckedTemplate(basePath = "people")
    static final class Templates {
        private Templates() {}

        /** @param secret the secret of the token just made; empty otherwise */
        static native TemplateInstance me(
                Mine account, List<TokenLine> tokens, String secret, String notice, List<Invalid.Problem> problems);
    }

    /** One's own account as text. */
    record Mine(String login, String name, String roles, String zone) {}

    /** One token as a line of text. */
    record TokenLine(long id, String name, String made, String expires, String lastUsed, String state, boolean good) {}

    @GET
    @Blocking
    public Response show() {
        return page(200, "", "", List.of());
    }

    @POST
    @Path("password")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response changePassword(
            @RestForm @Nullable String present, @RestForm @Nullable String password, RoutingContext request) {
        Actor by = current.actor();
        try {
            acts.changePassword(by, text(present), text(password));
        } catch (Invalid e) {
            return page(422, "", "", e.problems());
        }
        // the change ended every sign-in, this one too; whoever made it stays in
        signIn.byPassword(by.account(), text(password)).ifPresent(person -> sessions.begin(person, request));
        return page(200, "", "The password is changed. Everywhere else you are signed out.", List.of());
    }

    @POST
    @Path("zone")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response setZone(@RestForm @Nullable String zone) {
        try {
            acts.setZone(current.actor(), text(zone));
        } catch (Invalid e) {
            return page(422, "", "", e.problems());
        }
        return Html.goTo("/me");
    }

    /** Answers with the page itself and not with a redirect: the secret must be in no address, and is shown this once. */
    @POST
    @Path("tokens")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response createToken(@RestForm @Nullable String name, @RestForm @Nullable String days) {
        try {
            NewToken made = acts.createToken(current.actor(), text(name), days(days));
            return page(200, made.secret(), "", List.of());
        } catch (Invalid e) {
            return page(422, "", "", e.problems());
        }
    }

    @POST
    @Path("tokens/{id}/revocation")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response revokeToken(@RestPath long id) {
        acts.revokeToken(current.actor(), id);
        return Html.goTo("/me");
    }

    private Response page(int status, String secret, String notice, List<Invalid.Problem> problems) {
        AccountView own = acts.own(current.actor());
        Mine mine = new Mine(own.login(), own.name(), RoleNames.join(own.roles()), own.zone());
        ZoneId zone = ZoneId.of(own.zone());
        List<TokenLine> tokens = acts.ownTokens(current.actor()).stream()
                .map(token -> line(token, zone))
                .toList();
        return Html.status(status, Templates.me(mine, tokens, secret, notice, problems));
    }

    private TokenLine line(TokenView token, ZoneId zone) {
        boolean expired = !clock.instant().isBefore(token.expiresAt());
        String state = token.revokedAt() != null ? "revoked" : expired ? "expired" : "good";
        String lastUsed = token.lastUsed() == null ? "never" : when(token.lastUsed(), zone);
        return new TokenLine(
                token.id(),
                token.name(),
                when(token.createdAt(), zone),
                when(token.expiresAt(), zone),
                lastUsed,
                state,
                state.equals("good"));
    }

    private static String when(Instant time, ZoneId zone) {
        return WHEN.format(time.atZone(zone));
    }

    private static @Nullable Integer days(@Nullable String typed) {
        if (typed == null || typed.isBlank()) {
            return null;
        }
        try {
            return Integer.valueOf(typed.strip());
        } catch (NumberFormatException e) {
            throw new Invalid("days", "Type the number of days in digits.");
        }
    }

    private static String text(@Nullable String typed) {
        return typed == null ? "" : typed;
    }
}
