package org.benchtrail.people;

import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** The account behind the token, and its tokens. No token makes another: that takes the password, on one's own page. */
@Path("/api/me")
@Authenticated
@Tag(name = "Me")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
public class MeApi {
    private final PeopleActs acts;
    private final CurrentActor current;

    MeApi(PeopleActs acts, CurrentActor current) {
        this.acts = acts;
        this.current = current;
    }

    /** An IANA time zone. */
    public record Zone(@Nullable String zone) {}

    @GET
    @Operation(summary = "The account behind the token")
    @Blocking
    public AccountView me() {
        return acts.own(current.actor());
    }

    @PUT
    @Path("zone")
    @Operation(summary = "Set the time zone in which pages tell times")
    @Blocking
    public AccountView setZone(Zone zone) {
        return acts.setZone(current.actor(), zone.zone() == null ? "" : zone.zone());
    }

    @GET
    @Path("tokens")
    @Operation(summary = "The tokens of the account")
    @Blocking
    public List<TokenView> tokens() {
        return acts.ownTokens(current.actor());
    }

    @DELETE
    @Path("tokens/{id}")
    @Operation(summary = "Revoke a token")
    @Blocking
    public void revokeToken(@RestPath long id) {
        acts.revokeToken(current.actor(), id);
    }
}
