package org.benchtrail.people;

import io.quarkus.security.credential.TokenCredential;
import io.quarkus.security.identity.IdentityProviderManager;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.identity.request.AuthenticationRequest;
import io.quarkus.security.identity.request.TokenAuthenticationRequest;
import io.quarkus.vertx.http.runtime.security.ChallengeData;
import io.quarkus.vertx.http.runtime.security.HttpAuthenticationMechanism;
import io.quarkus.vertx.http.runtime.security.HttpSecurityUtils;
import io.smallrye.mutiny.Uni;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Set;
import org.benchtrail.platform.RequestKind;
import org.benchtrail.platform.outage.Outage;
import org.benchtrail.platform.problem.Problems;
import org.jspecify.annotations.Nullable;

/** Recognises programs at the API by the bearer token they send (RFC 6750), and by nothing else. */
@ApplicationScoped
class TokenSignIn implements HttpAuthenticationMechanism {
    private final Outage outage;

    TokenSignIn(Outage outage) {
        this.outage = outage;
    }

    private static final String SCHEME = "Bearer ";

    @Override
    public Uni<SecurityIdentity> authenticate(RoutingContext request, IdentityProviderManager identities) {
        String header = request.request().getHeader("Authorization");
        if (!RequestKind.takesTokens(request) || header == null) {
            return Uni.createFrom().nullItem();
        }
        request.put(HttpAuthenticationMechanism.class.getName(), this);
        return Identities.whileItGoesOn(outage, request)
                .orElseGet(() -> identities
                        .authenticate(HttpSecurityUtils.setRoutingContextAttribute(
                                new TokenAuthenticationRequest(new TokenCredential(token(header), "bearer")), request))
                        .onFailure(Identities::isAway)
                        .recoverWithItem(failure -> Identities.away(request, failure)));
    }

    /** The token in the header; whatever else stands there is passed on as it is and matches none. */
    private static String token(String header) {
        boolean bearer = header.regionMatches(true, 0, SCHEME, 0, SCHEME.length());
        return bearer ? header.substring(SCHEME.length()).strip() : header;
    }

    @Override
    public Uni<@Nullable ChallengeData> getChallenge(RoutingContext request) {
        return RequestKind.isApi(request)
                ? Uni.createFrom().item(new ChallengeData(401, "WWW-Authenticate", "Bearer realm=\"benchtrail\""))
                : Uni.createFrom().nullItem();
    }

    /** Answers a bad token with the same problem JSON as everything else under /api. */
    @Override
    public Uni<Boolean> sendChallenge(RoutingContext request) {
        if (!RequestKind.isApi(request)) {
            return Uni.createFrom().item(false);
        }
        Problems.endNotSignedIn(request);
        return Uni.createFrom().item(true);
    }

    @Override
    public Set<Class<? extends AuthenticationRequest>> getCredentialTypes() {
        return Set.of(TokenAuthenticationRequest.class);
    }
}
