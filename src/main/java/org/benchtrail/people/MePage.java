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
import jakarta.ws.rs.core.MultivaluedMap;
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
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.platform.form.Refusal;
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
                Mine account,
                List<TokenLine> tokens,
                String secret,
                String notice,
                FormValues fill,
                List<Invalid.Problem> problems);
    }

    /** One's own account as text. */
    record Mine(String login, String name, String roles, String zone) {}

    /** One token as a line of text. */
    record TokenLine(long id, String name, String made, String expires, String lastUsed, String state, boolean good) {}

    @GET
    @Blocking
    public Response show() {
        return Html.ok(page("", ""));
    }

    @POST
    @Path("password")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response changePassword(MultivaluedMap<String, String> typed, RoutingContext request) {
        PostedForm form = new PostedForm(typed);
        String chosen = form.asSent("password");
        return Refusal.answer(
                () -> {
                    Actor by = current.actor();
                    acts.changePassword(by, form.asSent("present"), chosen);
                    // the change ended every sign-in, this one too; whoever made it stays in
                    signIn.byPassword(by.account(), chosen).ifPresent(person -> sessions.begin(person, request));
                    return Html.ok(page("", "The password is changed. Everywhere else you are signed out."));
                },
                refusal -> page(form, refusal));
    }

    @POST
    @Path("zone")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response setZone(MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return Refusal.answer(
                () -> {
                    acts.setZone(current.actor(), form.text("zone"));
                    return Html.goTo("/me");
                },
                refusal -> page(form, refusal));
    }

    /** Answers with the page itself and not with a redirect: the secret must be in no address, and is shown this once. */
    @POST
    @Path("tokens")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response createToken(MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return Refusal.answer(
                () -> {
                    NewToken made = acts.createToken(current.actor(), form.text("name"), days(form));
                    return Html.ok(page(made.secret(), ""));
                },
                refusal -> page(form, refusal));
    }

    @POST
    @Path("tokens/{id}/revocation")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response revokeToken(@RestPath long id) {
        acts.revokeToken(current.actor(), id);
        return Html.goTo("/me");
    }

    private TemplateInstance page(String secret, String notice) {
        return page(secret, notice, new FormValues(), List.of());
    }

    private TemplateInstance page(PostedForm form, Refusal refusal) {
        return page("", "", new FormValues().typed(form, refusal), refusal.problems());
    }

    private TemplateInstance page(String secret, String notice, FormValues fill, List<Invalid.Problem> problems) {
        AccountView own = acts.own(current.actor());
        Mine mine = new Mine(own.login(), own.name(), RoleNames.join(own.roles()), own.zone());
        ZoneId zone = ZoneId.of(own.zone());
        List<TokenLine> tokens = acts.ownTokens(current.actor()).stream()
                .map(token -> line(token, zone))
                .toList();
        return Templates.me(mine, tokens, secret, notice, fill, problems);
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

    /** Null, for as long as the server allows, if the field is empty. */
    private static @Nullable Integer days(PostedForm form) {
        if (!form.has("days")) {
            return null;
        }
        try {
            return Integer.valueOf(form.text("days"));
        } catch (NumberFormatException e) {
            throw new Invalid("days", "Type the number of days in digits.");
        }
    }
}
