package org.benchtrail.ticket.api;

import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.ticket.TicketQueries;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;

/** The trail of a ticket, for programs. */
@Path("/api/tickets/{number}/trail")
@Authenticated
@Produces(MediaType.APPLICATION_JSON)
@Blocking
@Tag(name = "Tickets")
public class TrailApi {
    private final TicketQueries tickets;
    private final CurrentActor current;

    TrailApi(TicketQueries tickets, CurrentActor current) {
        this.tickets = tickets;
        this.current = current;
    }

    @GET
    @Operation(summary = "Every entry of the trail, as it was hashed")
    public List<TrailEntryJson> trail(@RestPath String number) {
        return tickets.trail(TicketNumber.parse(number), current.actor()).stream()
                .map(TrailEntryJson::of)
                .toList();
    }

    @GET
    @Path("verification")
    @Operation(summary = "Whether the trail holds, and if not, the first entry that does not")
    public VerificationJson verify(@RestPath String number) {
        return VerificationJson.of(
                tickets.verified(TicketNumber.parse(number), current.actor()).verification());
    }
}
