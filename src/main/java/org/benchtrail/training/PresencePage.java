package org.benchtrail.training;

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
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Invalid.Problem;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.PresenceEnded;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.people.Vouching;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.Option;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.platform.form.Refusal;
import org.benchtrail.ticket.Outcome;
import org.jboss.resteasy.reactive.RestPath;

/**
 * A mentor signs in for one dangerous act of a trainee, on their own device or on the trainee's, who stays signed in there. What is
 * sent holds a password: it is kept in no draft, and not for when the same is sent again.
 */
@Path("/tickets/{number}/presence/{about}")
@Authenticated
public class PresencePage {
    private static final String STALE = "Somebody else wrote on this sheet meanwhile: look again, then send.";
    private static final String PASSWORD = "password";

    private final PresenceQueries queries;
    private final PresenceActs acts;
    private final Vouching vouching;
    private final CurrentActor current;

    PresencePage(PresenceQueries queries, PresenceActs acts, Vouching vouching, CurrentActor current) {
        this.queries = queries;
        this.acts = acts;
        this.vouching = vouching;
        this.current = current;
    }

    @CheckedTemplate(basePath = "training")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance presence(
                PresenceView v, List<Option> yesNo, FormValues fill, List<Problem> problems);
    }

    /** An act for which somebody said who they are. */
    private interface Vouched {
        Outcome as(TicketNumber ticket, PostedForm form, Actor mentor);
    }

    @GET
    @Blocking
    public Response show(@RestPath String number, @RestPath int about) {
        TicketNumber ticket = TicketNumber.parse(number);
        PresenceView view = queries.view(ticket, about, current.actor(), current.zone());
        return Html.ok(page(view, new FormValues().set("login", view.login()), List.of()));
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response start(
            @RestPath String number,
            @RestPath int about,
            MultivaluedMap<String, String> typed,
            RoutingContext request) {
        return answer(
                number,
                about,
                new PostedForm(typed),
                request,
                (ticket, form, mentor) -> acts.start(ticket, form.version(), about, mentor));
    }

    @POST
    @Path("end")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response end(
            @RestPath String number,
            @RestPath int about,
            MultivaluedMap<String, String> typed,
            RoutingContext request) {
        return answer(number, about, new PostedForm(typed), request, (ticket, form, mentor) -> {
            String stayed = form.text("stayed");
            PresenceEnded ended = new PresenceEnded(
                    form.number("presence").orElse(0),
                    stayed.isEmpty() ? null : Boolean.valueOf(stayed),
                    form.text("saw"));
            return acts.end(ticket, form.version(), ended, mentor);
        });
    }

    private Response answer(String number, int about, PostedForm form, RoutingContext request, Vouched act) {
        Permissions.require(Permission.WORK_TICKETS, current.actor());
        TicketNumber ticket = TicketNumber.parse(number);
        return Refusal.respond(
                () -> {
                    Actor mentor = vouching.of(form.text("login"), form.asSent(PASSWORD), form.text("code"), request)
                            .orElseThrow(() -> new Invalid(PASSWORD, Vouching.refused()));
                    Outcome outcome = act.as(ticket, form, mentor);
                    return outcome.refused()
                            ? again(ticket, about, form, Refusal.unmet(problems(outcome)))
                            : Html.goTo("/tickets/" + ticket + "#step");
                },
                refusal -> again(ticket, about, form, refusal));
    }

    private static List<Problem> problems(Outcome outcome) {
        return outcome.missing().stream()
                .map(m -> new Problem("login", m.sentence()))
                .toList();
    }

    private Response again(TicketNumber ticket, int about, PostedForm form, Refusal refusal) {
        FormValues fill = new FormValues()
                .typed(form, refusal)
                .set("login", form.text("login"))
                .set("saw", form.text("saw"))
                .set("stayed", form.text("stayed"));
        List<Problem> problems = refusal.isStale() ? List.of(new Problem("login", STALE)) : refusal.problems();
        return refusal.on(page(queries.view(ticket, about, current.actor(), current.zone()), fill, problems));
    }

    private static TemplateInstance page(PresenceView view, FormValues fill, List<Problem> problems) {
        return Templates.presence(view, Option.yesNo("yes", "no"), fill, problems);
    }
}
