package org.benchtrail.training;

import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.NeedsPermission;
import org.benchtrail.people.Permission;
import org.benchtrail.platform.IfMatch;
import org.benchtrail.platform.description.AnswersWith;
import org.benchtrail.ticket.api.SheetJson;
import org.benchtrail.ticket.api.TicketAnswers;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** A mentor's presence, by a token of their own. */
@Path("/api/tickets/{number}/presences")
@Authenticated
@Produces(MediaType.APPLICATION_JSON)
@Blocking
@Tag(name = "Tickets")
public class PresenceApi {
    private final PresenceActs acts;
    private final TicketAnswers answers;
    private final CurrentActor current;

    PresenceApi(PresenceActs acts, TicketAnswers answers, CurrentActor current) {
        this.acts = acts;
        this.answers = answers;
        this.current = current;
    }

    /** @param about number of the entry that plans the check or action; 1 for a live measurement that belongs to no check */
    public record NewPresence(int about) {}

    @NeedsPermission(Permission.WORK_TICKETS)
    @AnswersWith(value = SheetJson.class, versioned = true)
    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(
            summary = "Be present, as their mentor, for one dangerous act of a trainee",
            description =
                    "It counts for that act alone, as it is planned now, and for 30 minutes. Without it the act answers 409,"
                            + " mentor-present. How it went is said by the act presence-ended.")
    public Response start(
            @RestPath String number, @HeaderParam("If-Match") @Nullable String version, NewPresence presence) {
        return answers.after(acts.start(
                TicketNumber.parse(number), IfMatch.version(version, "ticket"), presence.about(), current.actor()));
    }
}
