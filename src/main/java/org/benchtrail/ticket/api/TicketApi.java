package org.benchtrail.ticket.api;

import static org.benchtrail.ticket.api.TicketAnswers.version;

import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import org.benchtrail.bench.BenchRun;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.NeedsPermission;
import org.benchtrail.people.Permission;
import org.benchtrail.platform.description.AnswersWith;
import org.benchtrail.platform.repeat.Repeats;
import org.benchtrail.ticket.Act;
import org.benchtrail.ticket.Cursor;
import org.benchtrail.ticket.DueWithin;
import org.benchtrail.ticket.QueueFilter;
import org.benchtrail.ticket.QueuePart;
import org.benchtrail.ticket.TicketActs;
import org.benchtrail.ticket.TicketListQueries;
import org.benchtrail.ticket.bench.BenchActs;
import org.benchtrail.ticket.theorize.RankingQueries;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** Tickets for programs. Every act is a fact posted with its {@code kind}, the same form in which the trail keeps it. */
@Path("/api/tickets")
@Authenticated
@Produces(MediaType.APPLICATION_JSON)
@Blocking
@Tag(name = "Tickets")
public class TicketApi {
    private final TicketActs acts;
    private final BenchActs bench;
    private final TicketListQueries lists;
    private final RankingQueries rankings;
    private final TicketAnswers answers;
    private final CurrentActor current;
    private final Clock clock;
    private final Repeats repeats;

    TicketApi(
            TicketActs acts,
            BenchActs bench,
            TicketListQueries lists,
            RankingQueries rankings,
            TicketAnswers answers,
            CurrentActor current,
            Clock clock,
            Repeats repeats) {
        this.repeats = repeats;
        this.acts = acts;
        this.bench = bench;
        this.lists = lists;
        this.rankings = rankings;
        this.answers = answers;
        this.current = current;
        this.clock = clock;
    }

    @AnswersWith(value = QueueJson.class, paged = true)
    @GET
    @Operation(summary = "The queue, by due time; a Link header leads to the next page")
    public Response queue(
            @RestQuery @DefaultValue("OPEN") Standing standing,
            @RestQuery @Nullable Step step,
            @RestQuery @Nullable String assignee,
            @RestQuery @Nullable Category category,
            @RestQuery @Nullable String place,
            @RestQuery @Nullable String device,
            @RestQuery @Nullable Boolean held,
            @RestQuery @Nullable Boolean overdue,
            @RestQuery @DefaultValue("") String text,
            @RestQuery @Nullable String after,
            @RestQuery @DefaultValue("50") int size,
            UriInfo uri) {
        Instant now = clock.instant();
        QueueFilter filter = QueueFilter.of(standing)
                .step(step)
                .assignee(assignee)
                .category(category)
                .place(place)
                .device(device)
                .held(held)
                .due(overdue == null ? null : overdue ? DueWithin.past(now) : DueWithin.future(now))
                .text(text)
                .after(Cursor.parse(after))
                .lines(size);
        QueuePart part = lists.queue(filter, current.actor());
        Response.ResponseBuilder answer = Response.ok(QueueJson.of(part, lists.total(filter, current.actor())));
        if (part.next() != null) {
            URI next = uri.getRequestUriBuilder()
                    .replaceQueryParam("after", part.next())
                    .build();
            answer.header("Link", "<" + next.getRawPath() + "?" + next.getRawQuery() + ">; rel=\"next\"");
        }
        return answer.build();
    }

    @NeedsPermission(Permission.WORK_TICKETS)
    @AnswersWith(value = SheetJson.class, status = 201, versioned = true, once = true)
    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Open a ticket")
    public Response open(NewTicketJson report) {
        if (report == null) {
            throw new Invalid("body", "Send the report as a JSON object.");
        }
        return repeats.once(report.toString(), () -> answers.opened(acts.open(report.report(), current.actor())));
    }

    @GET
    @Path("alike")
    @Operation(summary = "Tickets whose words are like these")
    public List<TicketLineJson> alike(@RestQuery @DefaultValue("") String text) {
        boolean forecasts = current.actor().is(Role.TRAINEE);
        return TicketLineJson.all(lists.alike(text, 0, current.actor()).stream()
                .filter(t -> !forecasts || t.standing() == Standing.OPEN)
                .toList());
    }

    @AnswersWith(value = SheetJson.class, versioned = true)
    @GET
    @Path("{number}")
    @Operation(summary = "The job sheet of a ticket: where it stands, what is missing, and every fact")
    public Response ticket(@RestPath String number) {
        return answers.sheet(TicketNumber.parse(number));
    }

    @NeedsPermission(Permission.WORK_TICKETS)
    @AnswersWith(value = SheetJson.class, versioned = true, once = true)
    @POST
    @Path("{number}/acts")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(
            summary = "Do one act, or several in one go",
            description =
                    "The body is one fact with its kind, or an array of facts, done all or none in their order. If-Match names"
                            + " the version they build on. A refused act answers 409 with the list of what is missing, and is itself an"
                            + " entry of the trail.")
    public Response act(
            @RestPath String number,
            @HeaderParam("If-Match") @Nullable String version,
            @HeaderParam("Prefer") @Nullable String prefer,
            @RequestBody(ref = "Acts") JsonNode body) {
        TicketNumber ticket = TicketNumber.parse(number);
        List<Act> facts = ActsBody.read(body);
        int seen = version(version);
        return repeats.once(
                seen + " " + body, () -> answers.after(acts.perform(ticket, seen, facts, current.actor()), prefer));
    }

    @NeedsPermission(Permission.WORK_TICKETS)
    @AnswersWith(value = SheetJson.class, versioned = true, once = true)
    @POST
    @Path("{number}/bench-results")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(
            summary = "Calculate on the bench and keep the result on the job sheet",
            description = "A part check fills parts-fit of its action, a failing drive is recorded as a finding.")
    public Response attach(
            @RestPath String number,
            @HeaderParam("If-Match") @Nullable String version,
            @HeaderParam("Prefer") @Nullable String prefer,
            @Nullable BenchOrderJson order) {
        if (order == null || order.calculation() == null) {
            throw new Invalid("calculation", "Name the calculation; /api/bench lists them.");
        }
        BenchRun run = BenchRun.ofJson(order.calculation(), order.input());
        TicketNumber ticket = TicketNumber.parse(number);
        int seen = version(version);
        return repeats.once(
                seen + " " + order,
                () -> answers.after(bench.attach(ticket, seen, run, order.action(), current.actor()), prefer));
    }

    @GET
    @Path("{number}/ranking")
    @Operation(
            summary =
                    "The causes ranked from the evidence, why, and the next best test; with any version of the catalogue")
    public RankingJson ranking(@RestPath String number, @RestQuery @Nullable Integer version) {
        return RankingJson.of(rankings.ranked(TicketNumber.parse(number), version, current.actor())
                .ranking());
    }
}
