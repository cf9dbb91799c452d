package org.benchtrail.ticket.queue;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.util.Arrays;
import java.util.List;
import org.benchtrail.core.Invalid.Problem;
import org.benchtrail.core.method.Category;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.platform.form.Refusal;
import org.benchtrail.platform.form.SignedOut;
import org.benchtrail.platform.repeat.Repeats;
import org.benchtrail.ticket.NewTicket;
import org.benchtrail.ticket.TicketActs;
import org.jboss.resteasy.reactive.RestQuery;

/** The page that opens a ticket. */
@Path("/new-ticket")
public class NewTicketPage {
    private final TicketActs acts;
    private final QueueQueries queries;
    private final CurrentActor current;
    private final Repeats repeats;

    NewTicketPage(TicketActs acts, QueueQueries queries, CurrentActor current, Repeats repeats) {
        this.repeats = repeats;
        this.acts = acts;
        this.queries = queries;
        this.current = current;
    }

    @CheckedTemplate(basePath = "ticket/queue")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance newTicket(FormValues fill, List<Problem> problems, NamedBefore named);

        static native TemplateInstance alike(AlikeView alike);
    }

    /** @param of label of the device that it is about; empty if nobody has said yet */
    @GET
    @Authenticated
    @Blocking
    public Response blank(@RestQuery @DefaultValue("") String of) {
        Permissions.require(Permission.WORK_TICKETS, current.actor());
        return Html.ok(page(queries.about(of, current.actor()), List.of()));
    }

    /** Likely duplicates of what is being typed, known causes and tickets solved before, as a fragment. */
    @GET
    @Path("alike")
    @Authenticated
    @Blocking
    public Response alike(
            @RestQuery @DefaultValue("") String title,
            @RestQuery @DefaultValue("") String device,
            @RestQuery @DefaultValue("") String category) {
        Category chosen = Arrays.stream(Category.values())
                .filter(c -> c.name().equals(category))
                .findFirst()
                .orElse(null);
        return Html.ok(Templates.alike(queries.alike(title.strip(), device.strip(), chosen, current.actor())));
    }

    @POST
    @PermitAll
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response open(MultivaluedMap<String, String> typed) {
        if (!current.signedIn()) {
            return SignedOut.resend("/new-ticket", typed);
        }
        PostedForm form = new PostedForm(typed);
        return Refusal.answer(
                () -> repeats.once(
                        form,
                        () -> Html.goTo("/tickets/"
                                + acts.open(
                                                queries.completed(form.read(NewTicket.class), current.actor()),
                                                current.actor())
                                        .number())),
                refusal -> page(new FormValues().typed(form, refusal), refusal.problems()));
    }

    private TemplateInstance page(FormValues values, List<Problem> problems) {
        return Templates.newTicket(values, problems, queries.named(current.actor()));
    }
}
