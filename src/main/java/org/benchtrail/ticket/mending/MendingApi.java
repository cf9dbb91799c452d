package org.benchtrail.ticket.mending;

import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.NeedsPermission;
import org.benchtrail.people.Permission;
import org.benchtrail.ticket.TicketMending;
import org.benchtrail.trail.Mendings.Outcome;
import org.benchtrail.trail.Mendings.Proposal;
import org.benchtrail.trail.Mendings.Way;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** Mending a ticket whose trail was found broken, for programs; it takes two persons here as on the page. */
@Path("/api/tickets/{number}/mending")
@Authenticated
@Produces(MediaType.APPLICATION_JSON)
@Blocking
@Tag(name = "Tickets")
public class MendingApi {
    private final TicketMending mending;
    private final CurrentActor current;

    MendingApi(TicketMending mending, CurrentActor current) {
        this.mending = mending;
        this.current = current;
    }

    /**
     * What is proposed.
     *
     * @param file lines of a trail with proofs, to put back from
     */
    public record Proposing(
            @Nullable Way way,
            @Nullable String reason,
            @Nullable String file) {}

    /**
     * How a ticket stands.
     *
     * @param fault what does not hold; empty if nothing is to be mended
     * @param first the first entry that is lost; after {@code last} if none is
     * @param last where the trail has to end
     * @param stuck why neither way is open; empty if one is
     * @param proposals the newest first
     */
    public record MendingJson(
            String number, String fault, int first, int last, String stuck, List<ProposalLine> proposals) {}

    /** @param outcome null as long as it waits for another person */
    public record ProposalLine(
            long id,
            Way way,
            String reason,
            int first,
            int last,
            String by,
            @Nullable Outcome outcome,
            @Nullable String endedBy) {
        static ProposalLine of(Proposal proposal) {
            return new ProposalLine(
                    proposal.id(),
                    proposal.way(),
                    proposal.reason(),
                    proposal.first(),
                    proposal.last(),
                    proposal.by(),
                    proposal.outcome(),
                    proposal.endedBy());
        }
    }

    private MendingJson look(TicketNumber number) {
        TicketMending.Standing standing = mending.look(number, current.actor());
        return new MendingJson(
                standing.number(),
                standing.fault(),
                standing.first(),
                standing.last(),
                standing.stuck(),
                standing.proposals().stream().map(ProposalLine::of).toList());
    }

    @NeedsPermission(Permission.MEND_TRAILS)
    @GET
    @Operation(summary = "What does not hold of a ticket, and what was proposed about it")
    public MendingJson mending(@RestPath String number) {
        return look(TicketNumber.parse(number));
    }

    @NeedsPermission(Permission.MEND_TRAILS)
    @POST
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Propose how a broken ticket is mended; a person of the other role has to agree")
    public MendingJson propose(@RestPath String number, Proposing asked) {
        TicketNumber ticket = TicketNumber.parse(number);
        mending.propose(
                ticket,
                new TicketMending.Wanted(asked.way(), Objects.requireNonNullElse(asked.reason(), "")),
                Objects.requireNonNullElse(asked.file(), "").getBytes(StandardCharsets.UTF_8),
                current.actor());
        return look(ticket);
    }

    @NeedsPermission(Permission.MEND_TRAILS)
    @POST
    @Path("{id}/agreement")
    @Operation(
            summary =
                    "Agree to what a person of the other role proposed: the ticket is mended, or the proposal has lapsed")
    public MendingJson agree(@RestPath String number, @RestPath long id) {
        TicketNumber ticket = TicketNumber.parse(number);
        mending.agree(ticket, id, current.actor());
        return look(ticket);
    }

    @NeedsPermission(Permission.MEND_TRAILS)
    @POST
    @Path("{id}/withdrawal")
    @Operation(summary = "Withdraw what is proposed about a broken ticket")
    public MendingJson withdraw(@RestPath String number, @RestPath long id) {
        TicketNumber ticket = TicketNumber.parse(number);
        mending.withdraw(ticket, id, current.actor());
        return look(ticket);
    }
}
