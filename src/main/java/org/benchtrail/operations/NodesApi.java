package org.benchtrail.operations;

import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.nodes.Nodes;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** The servers on this database, for an administrator's programs. */
@Path("/api/nodes")
@Authenticated
@Produces(MediaType.APPLICATION_JSON)
@Blocking
@Tag(name = "Site")
public class NodesApi {
    private final Nodes nodes;
    private final CurrentActor current;

    NodesApi(Nodes nodes, CurrentActor current) {
        this.nodes = nodes;
        this.current = current;
    }

    @GET
    @Operation(summary = "The servers that run on the database, each with its release and when it was last seen")
    public List<Nodes.Node> nodes() {
        Permissions.require(Permission.MANAGE_ACCOUNTS, current.actor());
        return nodes.all();
    }
}
