package org.benchtrail.people;

import io.quarkus.security.identity.AuthenticationRequestContext;
import io.quarkus.security.identity.IdentityProvider;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.identity.request.TokenAuthenticationRequest;
import io.quarkus.vertx.http.runtime.security.HttpSecurityUtils;
import io.smallrye.mutiny.Uni;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;

/** Finds the owner of a program's token. */
@ApplicationScoped
class TokenIdentity implements IdentityProvider<TokenAuthenticationRequest> {
    private final SignIn signIn;

    TokenIdentity(SignIn signIn) {
        this.signIn = signIn;
    }

    @Override
    public Class<TokenAuthenticationRequest> getRequestType() {
        return TokenAuthenticationRequest.class;
    }

    @Override
    public Uni<SecurityIdentity> authenticate(
            TokenAuthenticationRequest request, AuthenticationRequestContext context) {
        return context.runBlocking(
                () -> Identities.of(signIn.byToken(request.getToken().getToken(), reading(request))));
    }

    private static boolean reading(TokenAuthenticationRequest request) {
        RoutingContext http = HttpSecurityUtils.getRoutingContextAttribute(request);
        return http != null && http.request().method().name().equals("GET");
    }
}
