package org.benchtrail.learning;

import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Instant;
import java.util.List;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.NeedsPermission;
import org.benchtrail.people.Permission;
import org.benchtrail.platform.description.AnswersWith;
import org.benchtrail.proposals.ProposalApi;
import org.benchtrail.proposals.ProposalView;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** Judging cases and learning from them, for programs. */
@Path("/api/learning")
@Authenticated
@Produces(MediaType.APPLICATION_JSON)
@Blocking
@Tag(name = "Learning")
public class LearningApi {
    private static final int LINES = 50;

    private final LearningActs acts;
    private final LearnedFigures figures;
    private final CalibrationQueries calibration;
    private final CurrentActor current;

    LearningApi(LearningActs acts, LearnedFigures figures, CalibrationQueries calibration, CurrentActor current) {
        this.acts = acts;
        this.figures = figures;
        this.calibration = calibration;
        this.current = current;
    }

    /**
     * Tickets to judge.
     *
     * @param reason needed to leave out or withdraw
     */
    public record TicketsToJudge(
            @Nullable List<String> tickets, @Nullable String reason) {
        List<TicketNumber> numbers() {
            return tickets == null
                    ? List.of()
                    : tickets.stream().map(TicketNumber::parse).toList();
        }

        String why() {
            return reason == null ? "" : reason;
        }
    }

    /** What was previewed, to be made a version. */
    public record Apply(
            @Nullable Integer base,
            @Nullable Instant at,
            @Nullable String fingerprint,
            boolean approved,
            @Nullable String note) {}

    /** The learning to be undone. */
    public record Undo(@Nullable Integer base, @Nullable String note) {}

    @AnswersWith(value = WaitingPart.class, paged = true)
    @GET
    @Path("waiting")
    @Operation(summary = "Closed tickets that wait to be judged; a Link header leads on")
    public Response waiting(@RestQuery @Nullable String after, @RestQuery @DefaultValue("50") int size) {
        WaitingPart part = acts.waiting(after, size, current.actor());
        Response.ResponseBuilder answer = Response.ok(part);
        return part.next() == null
                ? answer.build()
                : answer.link(URI.create("/api/learning/waiting?size=" + size + "&after=" + part.next()), "next")
                        .build();
    }

    @GET
    @Path("cases")
    @Operation(summary = "Judged cases, newest first")
    public List<CaseView> cases(@RestQuery @DefaultValue("ACCEPTED") CaseState state) {
        return acts.judged(state, Long.MAX_VALUE, LINES, current.actor());
    }

    @NeedsPermission(Permission.KEEP_CATALOGUE)
    @POST
    @Path("accepted")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Accept tickets as cases, all or none")
    public List<CaseView> accept(TicketsToJudge judged) {
        return acts.accept(judged.numbers(), current.actor());
    }

    @NeedsPermission(Permission.KEEP_CATALOGUE)
    @POST
    @Path("left-out")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Leave tickets out, with a reason")
    public List<CaseView> leaveOut(TicketsToJudge judged) {
        return acts.leaveOut(judged.numbers(), judged.why(), current.actor());
    }

    @NeedsPermission(Permission.KEEP_CATALOGUE)
    @POST
    @Path("withdrawn")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Withdraw accepted cases, with a reason")
    public List<CaseView> withdraw(TicketsToJudge judged) {
        return acts.withdraw(judged.numbers(), judged.why(), current.actor());
    }

    @GET
    @Path("preview")
    @Operation(summary = "What learning from the accepted cases would change; stores nothing")
    public LearningPreview preview() {
        return figures.preview(current.actor());
    }

    @NeedsPermission(Permission.KEEP_CATALOGUE)
    @AnswersWith(value = ProposalView.class, status = 202)
    @POST
    @Path("versions")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Propose a version of what was previewed; another supervisor confirms it under /api/proposals")
    public Response apply(Apply asked) {
        return ProposalApi.proposed(figures.apply(
                asked.base() == null ? 0 : asked.base(),
                asked.at(),
                asked.fingerprint() == null ? "" : asked.fingerprint(),
                asked.approved(),
                asked.note() == null ? "" : asked.note(),
                current.actor()));
    }

    @NeedsPermission(Permission.KEEP_CATALOGUE)
    @AnswersWith(value = ProposalView.class, status = 202)
    @POST
    @Path("undoing")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(
            summary = "Propose to undo the last learning: restore the version before it; another supervisor confirms it"
                    + " under /api/proposals")
    public Response undo(Undo asked) {
        return ProposalApi.proposed(figures.undo(
                asked.base() == null ? 0 : asked.base(), asked.note() == null ? "" : asked.note(), current.actor()));
    }

    @GET
    @Path("calibration")
    @Operation(summary = "How well the probabilities that were shown held")
    public CalibrationView calibration(@RestQuery @DefaultValue("") String category) {
        return calibration.view(category, current.actor());
    }
}
