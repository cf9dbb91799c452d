package org.benchtrail.proposals;

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
import java.util.List;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.NeedsPermission;
import org.benchtrail.people.Permission;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** Changes that take two supervisors, for programs. */
@Path("/api/proposals")
@Authenticated
@Produces(MediaType.APPLICATION_JSON)
@Blocking
@Tag(name = "Proposals")
public class ProposalApi {
    private final ProposalActs acts;
    private final CurrentActor current;

    ProposalApi(ProposalActs acts, CurrentActor current) {
        this.acts = acts;
        this.current = current;
    }

    /** Why a proposal is declined. */
    public record Declining(@Nullable String reason) {}

    /** The answer to what would be a change, if it did not take two: accepted, and not made yet. */
    public static Response proposed(ProposalView proposal) {
        return Response.accepted(proposal)
                .location(URI.create("/api/proposals/" + proposal.id()))
                .build();
    }

    @GET
    @Operation(summary = "Proposals that wait, the longest waiting first; or those that were decided, the last first")
    public List<ProposalView> proposals(@RestQuery @DefaultValue("false") boolean decided) {
        return decided ? acts.decided(current.actor()) : acts.waiting(current.actor());
    }

    @GET
    @Path("{id}")
    @Operation(summary = "A proposal with what it would change")
    public ProposalDetails proposal(@RestPath long id) {
        return acts.details(id, current.actor());
    }

    @NeedsPermission(Permission.DECIDE_PROPOSALS)
    @POST
    @Path("{id}/confirmation")
    @Operation(summary = "Confirm what another supervisor proposed: the change is made")
    public ProposalView confirm(@RestPath long id) {
        return acts.confirm(id, current.actor());
    }

    @NeedsPermission(Permission.DECIDE_PROPOSALS)
    @POST
    @Path("{id}/declining")
    @Consumes(MediaType.APPLICATION_JSON)
    @Operation(summary = "Decline what another supervisor proposed, with a reason")
    public ProposalView decline(@RestPath long id, Declining asked) {
        return acts.decline(id, asked.reason() == null ? "" : asked.reason(), current.actor());
    }

    @NeedsPermission(Permission.DECIDE_PROPOSALS)
    @POST
    @Path("{id}/withdrawal")
    @Operation(summary = "Withdraw what one proposed oneself")
    public ProposalView withdraw(@RestPath long id) {
        return acts.withdraw(id, current.actor());
    }
}
