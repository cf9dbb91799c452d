package org.benchtrail.people;

import io.quarkus.security.identity.IdentityProviderManager;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.identity.request.TrustedAuthenticationRequest;
import io.quarkus.vertx.http.runtime.security.ChallengeData;
import io.quarkus.vertx.http.runtime.security.HttpAuthenticationMechanism;
import io.smallrye.mutiny.Uni;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Set;
import org.benchtrail.platform.RequestKind;
import org.benchtrail.platform.outage.Outage;

/** Recognises people on the pages by their cookie, and by nothing else. */
@ApplicationScoped
class PageSignIn implements HttpAuthenticationMechanism {
    private final Sessions sessions;
    private final Outage outage;

    PageSignIn(Sessions sessions, Outage outage) {
        this.sessions = sessions;
        this.outage = outage;
    }

    /** The person, or nobody: a cookie that is no longer good leaves the visitor a stranger, who can sign in again. */
    @Override
    public Uni<SecurityIdentity> authenticate(RoutingContext request, IdentityProviderManager identities) {
        if (RequestKind.isApi(request) || RequestKind.isPublicFile(request)) {
            return Uni.createFrom().nullItem();
        }
        return sessions.secret(request)
                .map(secret -> Identities.whileItGoesOn(outage, request)
                        .orElseGet(() -> identities
                                .authenticate(new TrustedAuthenticationRequest(secret))
                                .onFailure(io.quarkus.security.AuthenticationFailedException.class)
                                .recoverWithNull()
                                .onFailure(Identities::isAway)
                                .recoverWithItem(failure -> Identities.away(request, failure))))
                .orElseGet(() -> Uni.createFrom().nullItem());
    }

    @Override
    public Uni<ChallengeData> getChallenge(RoutingContext request) {
        return RequestKind.isApi(request)
                ? Uni.createFrom().nullItem()
                : Uni.createFrom().item(new ChallengeData(302, "Location", "/sign-in"));
    }

    @Override
    public Set<Class<? extends io.quarkus.security.identity.request.AuthenticationRequest>> getCredentialTypes() {
        return Set.of(TrustedAuthenticationRequest.class);
    }
}
