package org.benchtrail.people;

import io.quarkus.security.AuthenticationFailedException;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.runtime.QuarkusPrincipal;
import io.quarkus.security.runtime.QuarkusSecurityIdentity;
import io.smallrye.mutiny.Uni;
import io.vertx.ext.web.RoutingContext;
import java.util.Optional;
import java.util.stream.Collectors;
import org.benchtrail.platform.outage.DatabaseFault;
import org.benchtrail.platform.outage.Outage;
import org.benchtrail.platform.problem.WhileAway;

/** Turns a person found good into what the framework passes along with the request. */
final class Identities {
    private Identities() {}

    /** Whether nobody can be found because the database is away. */
    static boolean isAway(Throwable failure) {
        return DatabaseFault.of(failure).isPresent();
    }

    /** While the database is away nobody is looked up: each would wait in vain. Empty while it answers. */
    static Optional<Uni<SecurityIdentity>> whileItGoesOn(Outage outage, RoutingContext request) {
        return outage.goesOn().map(failure -> Uni.createFrom().item(away(request, failure)));
    }

    /** Stands for whoever it may be while the database is away: comes in no further than to be told so. */
    static SecurityIdentity away(RoutingContext request, Throwable failure) {
        WhileAway.refuse(request, failure);
        return QuarkusSecurityIdentity.builder()
                .setPrincipal(new QuarkusPrincipal("(unknown)"))
                .build();
    }

    /** @throws AuthenticationFailedException if nobody was found */
    static SecurityIdentity of(Optional<SignedIn> found) {
        SignedIn person = found.orElseThrow(AuthenticationFailedException::new);
        return QuarkusSecurityIdentity.builder()
                .setPrincipal(new QuarkusPrincipal(person.actor().account()))
                .addRoles(person.actor().roles().stream().map(Enum::name).collect(Collectors.toSet()))
                .addAttribute(CurrentActor.ATTRIBUTE, person)
                .build();
    }
}
