package org.benchtrail.ticket.queue;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import jakarta.ws.rs.core.UriInfo;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Csv;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.platform.form.Refusal;
import org.benchtrail.ticket.HandOvers;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** The queue of tickets. */
@Path("/")
@Authenticated
public class QueuePage {
    private final QueueQueries queries;
    private final QueueCsv csv;
    private final SavedFilters saved;
    private final HandOvers handOvers;
    private final CurrentActor current;

    QueuePage(QueueQueries queries, QueueCsv csv, SavedFilters saved, HandOvers handOvers, CurrentActor current) {
        this.queries = queries;
        this.csv = csv;
        this.saved = saved;
        this.handOvers = handOvers;
        this.current = current;
    }

    @CheckedTemplate(basePath = "ticket/queue")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance queue(QueueView v);

        static native TemplateInstance handedOver(List<HandOvers.Result> results, long done, String back);
    }

    @GET
    @Path("queue")
    @Blocking
    public Response queue(UriInfo address) {
        QueueAsked asked = asked(address);
        Optional<TicketNumber> numbered = queries.numbered(asked, current.actor());
        if (numbered.isPresent()) {
            return Html.goTo("/tickets/" + numbered.get());
        }
        return Html.ok(Templates.queue(queries.queue(asked, current.actor(), current.zone(), null, List.of())));
    }

    /** Every ticket that the filter fits, as a file. */
    @GET
    @Path("queue.csv")
    @Blocking
    public Response file(@RestQuery("for") @DefaultValue("") String reader, UriInfo address) {
        Csv form = Csv.of(reader);
        QueueAsked asked = asked(address);
        Actor viewer = current.actor();
        Permissions.require(Permission.SEE_TICKETS, viewer);
        ZoneId zone = current.zone();
        StreamingOutput lines = file -> csv.write(asked, form, viewer, zone, file);
        return Response.ok(lines, Csv.MEDIA_TYPE)
                .header("Content-Disposition", form.disposition("queue"))
                .build();
    }

    @POST
    @Path("queue/filters")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response keep(MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        QueueAsked asked = form.read(QueueAsked.class);
        return Refusal.answer(
                () -> {
                    saved.keep(form.text("name"), asked, current.actor());
                    return Html.goTo("/queue?" + asked.query());
                },
                refusal -> again(asked, form, refusal));
    }

    @POST
    @Path("queue/filters/{id}/removal")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response remove(@RestPath long id) {
        saved.remove(id, current.actor());
        return Html.goTo("/queue");
    }

    /** Where a reload of what the form below answers leads to. */
    @GET
    @Path("queue/hand-over")
    @Blocking
    public Response backToQueue() {
        return Html.goTo("/queue");
    }

    /** Gives the ticked tickets to one person, or every ticket that the filter fits; what became of each is told. */
    @POST
    @Path("queue/hand-over")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response handOver(MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        QueueAsked asked = form.read(QueueAsked.class);
        Actor by = current.actor();
        return Refusal.answer(
                () -> {
                    Permissions.require(Permission.WORK_TICKETS, by);
                    List<HandOvers.Seen> tickets = form.has("all")
                            ? queries.seen(asked, by, current.zone())
                            : form.all("ticket").stream()
                                    .map(HandOvers.Seen::parse)
                                    .toList();
                    List<HandOvers.Result> results = handOvers.give(tickets, form.text("to"), form.text("note"), by);
                    long done = results.stream().filter(HandOvers.Result::done).count();
                    return Html.ok(Templates.handedOver(results, done, "/queue?" + asked.query()));
                },
                refusal -> again(asked, form, refusal));
    }

    private TemplateInstance again(QueueAsked asked, PostedForm form, Refusal refusal) {
        return Templates.queue(queries.queue(asked, current.actor(), current.zone(), form, refusal.problems()));
    }

    private static QueueAsked asked(UriInfo address) {
        return new PostedForm(address.getQueryParameters()).read(QueueAsked.class);
    }
}
