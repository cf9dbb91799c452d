package org.benchtrail.ticket;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
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
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.benchtrail.bench.BenchRun;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Method;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.NotFound;
import org.benchtrail.platform.problem.Problem;
import org.benchtrail.platform.problem.ProblemKind;
import org.benchtrail.trail.FactJson;
import org.benchtrail.trail.TrailEntry;
import org.benchtrail.trail.Verification;
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
    private final TicketLook look;
    private final CurrentActor current;
    private final PolicyConfig policy;
    private final Clock clock;
    private final ObjectMapper mapper;
    private final BenchActs bench;
    private final Diagnoses diagnoses;

    TicketApi(
            TicketActs acts,
            TicketLook look,
            CurrentActor current,
            PolicyConfig policy,
            Clock clock,
            ObjectMapper mapper,
            BenchActs bench,
            Diagnoses diagnoses) {
        this.acts = acts;
        this.bench = bench;
        this.diagnoses = diagnoses;
        this.look = look;
        this.current = current;
        this.policy = policy;
        this.clock = clock;
        this.mapper = FactJson.teach(mapper.copy());
    }

    @GET
    @Operation(summary = "The queue, by due time; a Link header leads to the next page")
    public Response queue(
            @RestQuery @DefaultValue("OPEN") Standing standing,
            @RestQuery @Nullable Step step,
            @RestQuery @Nullable String assignee,
            @RestQuery @Nullable String place,
            @RestQuery @Nullable Boolean held,
            @RestQuery @Nullable Boolean overdue,
            @RestQuery @DefaultValue("") String text,
            @RestQuery @Nullable String after,
            @RestQuery @DefaultValue("50") int size,
            UriInfo uri) {
        QueueFilter filter = new QueueFilter(
                standing, step, assignee, place, held, overdue, text, QueueFilter.Cursor.parse(after), size);
        QueuePart part = look.queue(filter, current.actor());
        Response.ResponseBuilder answer = Response.ok(part);
        if (part.next() != null) {
            URI next = uri.getRequestUriBuilder()
                    .replaceQueryParam("after", part.next())
                    .build();
            answer.header("Link", "<" + next.getRawPath() + "?" + next.getRawQuery() + ">; rel=\"next\"");
        }
        return answer.build();
    }

    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Open a ticket")
    public Response open(NewTicket report) {
        if (report == null) {
            throw new Invalid("body", "Send the report as a JSON object.");
        }
        Outcome opened = acts.open(report, current.actor());
        return sheet(Response.created(URI.create("/api/tickets/" + opened.number())), opened.number());
    }

    @GET
    @Path("alike")
    @Operation(summary = "Tickets whose words are like these")
    public List<TicketLine> alike(@RestQuery @DefaultValue("") String text) {
        return look.alike(text, 0, current.actor());
    }

    @GET
    @Path("{number}")
    @Operation(summary = "The job sheet of a ticket: where it stands, what is missing, and every fact")
    public Response ticket(@RestPath String number) {
        return sheet(Response.ok(), TicketNumber.parse(number));
    }

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
            @RequestBody(ref = "Acts") JsonNode body) {
        TicketNumber ticket = TicketNumber.parse(number);
        List<Act> facts = ActsBody.read(body);
        return answer(acts.perform(ticket, version(version), facts, current.actor()));
    }

    /**
     * A calculation to be made and kept.
     *
     * @param input as for the bench itself
     * @param action entry number of the planned action whose part it checks; null if it checks none
     */
    public record BenchOrder(
            String calculation, JsonNode input, @Nullable Integer action) {}

    @POST
    @Path("{number}/bench-results")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(
            summary = "Calculate on the bench and keep the result on the job sheet",
            description = "A part check fills parts-fit of its action, a failing drive is recorded as a finding.")
    public Response attach(
            @RestPath String number, @HeaderParam("If-Match") @Nullable String version, @Nullable BenchOrder order) {
        Permissions.require(Permission.WORK_TICKETS, current.actor());
        if (order == null || order.calculation() == null) {
            throw new Invalid("calculation", "Name the calculation; /api/bench lists them.");
        }
        BenchRun run = BenchRun.ofJson(order.calculation(), order.input());
        return answer(bench.attach(TicketNumber.parse(number), version(version), run, order.action(), current.actor()));
    }

    /**
     * The causes of a ticket, ranked.
     *
     * @param catalogue version of the catalogue
     * @param figures where they come from
     * @param next id of the finding that is best asked next; null if acting is better
     */
    public record RankingJson(
            int catalogue,
            String figures,
            boolean hasEvidence,
            List<RankingView.Line> causes,
            List<String> warnings,
            String flips,
            RankingView.@Nullable Test next,
            String act) {}

    @GET
    @Path("{number}/ranking")
    @Operation(
            summary =
                    "The causes ranked from the evidence, why, and the next best test; with any version of the catalogue")
    public RankingJson ranking(@RestPath String number, @RestQuery @Nullable Integer version) {
        JobSheet sheet =
                look.ticket(TicketNumber.parse(number), current.actor()).sheet();
        Diagnoses.Dated dated = (version == null ? diagnoses.of(sheet) : diagnoses.of(sheet, version))
                .orElseThrow(() -> new NotFound("ranking for this category"));
        RankingView view = new RankingView(sheet, dated);
        return new RankingJson(
                dated.version(),
                dated.label(),
                view.rested(),
                view.causes(),
                view.warnings(),
                view.flips(),
                view.next(),
                view.act());
    }

    @POST
    @Path("{number}/attachments")
    @Consumes(MediaType.WILDCARD)
    @Operation(summary = "Attach a file: its bytes are the body, its media type the Content-Type")
    public Response attach(
            @RestPath String number,
            @HeaderParam("If-Match") @Nullable String version,
            @HeaderParam("Content-Type") @DefaultValue("application/octet-stream") String mediaType,
            @RestQuery @DefaultValue("") String fileName,
            @RestQuery @DefaultValue("") String shows,
            byte[] content) {
        return answer(acts.attach(
                TicketNumber.parse(number), version(version), fileName, mediaType, content, shows, current.actor()));
    }

    @GET
    @Path("{number}/attachments/{sha256}")
    @Produces(MediaType.APPLICATION_OCTET_STREAM)
    @Operation(summary = "The bytes of an attached file")
    public byte[] file(@RestPath String number, @RestPath String sha256) {
        return look.file(TicketNumber.parse(number), sha256, current.actor());
    }

    /** An entry of the trail: the canonical text that was hashed, and its hash. */
    public record TrailJson(int entry, String kind, String canonical, String hash) {
        static TrailJson of(TrailEntry e) {
            return new TrailJson(
                    e.entry(), e.kind(), new String(e.canonical(), java.nio.charset.StandardCharsets.UTF_8), e.hash());
        }
    }

    @GET
    @Path("{number}/trail")
    @Operation(summary = "Every entry of the trail, as it was hashed")
    public List<TrailJson> trail(@RestPath String number) {
        return look.trail(TicketNumber.parse(number), current.actor()).stream()
                .map(TrailJson::of)
                .toList();
    }

    @GET
    @Path("{number}/trail/verification")
    @Operation(summary = "Whether the trail holds, and if not, the first entry that does not")
    public Verification verify(@RestPath String number) {
        return look.verify(TicketNumber.parse(number), current.actor());
    }

    private Response sheet(Response.ResponseBuilder answer, TicketNumber number) {
        TicketLook.Whole ticket = look.ticket(number, current.actor());
        SheetJson json = SheetJson.of(ticket, Method.gate(ticket.sheet(), policy.policy(), clock.instant()));
        return answer.entity(mapper.valueToTree(json))
                .header("ETag", "\"" + ticket.sheet().entries() + "\"")
                .build();
    }

    private Response answer(Outcome outcome) {
        if (!outcome.refused()) {
            return sheet(Response.ok(), outcome.number());
        }
        Map<String, Object> members = new LinkedHashMap<>(
                Problem.of(ProblemKind.UNMET, sentence(outcome.missing())).members());
        members.put("missing", outcome.missing());
        return Response.status(ProblemKind.UNMET.status())
                .entity(members)
                .type("application/problem+json")
                .header("ETag", "\"" + outcome.sheet().entries() + "\"")
                .build();
    }

    private static String sentence(List<Missing> missing) {
        return missing.size() == 1
                ? missing.get(0).sentence()
                : missing.size() + " requirements are not met; each is listed under missing.";
    }

    private static int version(@Nullable String ifMatch) {
        String digits = ifMatch == null ? "" : ifMatch.strip().replaceAll("^\"|\"$", "");
        if (!digits.matches("\\d{1,9}")) {
            throw new Invalid(
                    "If-Match", "Name the version of the ticket that this builds on: its ETag, such as \"27\".");
        }
        return Integer.parseInt(digits);
    }
}
