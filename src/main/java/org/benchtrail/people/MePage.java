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
import java.util.List;
import java.util.function.Consumer;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.platform.form.Refusal;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** One's own account: name, zone, absence, password, sign-ins, tokens for programs. */
@Path("/me")
@Authenticated
public class MePage {
    private final PeopleActs acts;
    private final CurrentActor current;
    private final SignIn signIn;
    private final Sessions sessions;
    private final AbsenceActs absences;
    private final MeQueries queries;

    MePage(
            PeopleActs acts,
            CurrentActor current,
            SignIn signIn,
            Sessions sessions,
            AbsenceActs absences,
            MeQueries queries) {
        this.acts = acts;
        this.current = current;
        this.signIn = signIn;
        this.sessions = sessions;
        this.absences = absences;
        this.queries = queries;
    }

    @CheckedTemplate(basePath = "people")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance me(MeView v);
    }

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
                    sessions.begin(signIn.again(by.account()), request);
                    return Html.ok(page("", "The password is changed. Everywhere else you are signed out."));
                },
                refusal -> page(form, refusal));
    }

    @POST
    @Path("name")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response rename(MultivaluedMap<String, String> typed) {
        return afterwards(typed, form -> acts.rename(current.actor(), form.text("display")));
    }

    @POST
    @Path("absences")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response noteAbsence(MultivaluedMap<String, String> typed) {
        Actor by = current.actor();
        return afterwards(
                typed,
                form -> absences.note(by, by.account(), form.text("first"), form.text("last"), form.text("delegate")));
    }

    @POST
    @Path("absences/{id}/end")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response endAbsence(@RestPath long id) {
        absences.withdraw(current.actor(), current.actor().account(), id);
        return Html.goTo("/me");
    }

    @POST
    @Path("sessions/{id}/end")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response endSession(@RestPath long id) {
        acts.endSession(current.actor(), id);
        return Html.goTo("/me");
    }

    @POST
    @Path("sessions/end-others")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response endOtherSessions() {
        acts.endOtherSessions(current.actor(), current.session());
        return Html.goTo("/me");
    }

    @POST
    @Path("zone")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response setZone(MultivaluedMap<String, String> typed) {
        return afterwards(typed, form -> acts.setZone(current.actor(), form.text("zone")));
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
                    acts.requirePassword(current.actor(), form.asSent("present"));
                    NewToken made = acts.createToken(
                            current.actor(), form.text("name"), days(form), TokenScope.parse(form.text("scope")));
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

    private Response afterwards(MultivaluedMap<String, String> typed, Consumer<PostedForm> act) {
        PostedForm form = new PostedForm(typed);
        return Refusal.answer(
                () -> {
                    act.accept(form);
                    return Html.goTo("/me");
                },
                refusal -> page(form, refusal));
    }

    private TemplateInstance page(String secret, String notice) {
        return page(secret, notice, queries.stored(current.actor().account()), List.of());
    }

    /** Passwords are typed again. */
    private TemplateInstance page(PostedForm form, Refusal refusal) {
        FormValues fill = queries.stored(current.actor().account()).typed(form, refusal);
        return page("", "", fill, refusal.problems());
    }

    private TemplateInstance page(String secret, String notice, FormValues fill, List<Invalid.Problem> problems) {
        return Templates.me(queries.me(current.actor().account(), current.session(), secret, notice, fill, problems));
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
