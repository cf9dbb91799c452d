package org.benchtrail.people;

import io.quarkus.security.identity.AuthenticationRequestContext;
import io.quarkus.security.identity.IdentityProvider;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.identity.request.TrustedAuthenticationRequest;
import io.smallrye.mutiny.Uni;
import jakarta.enterprise.context.ApplicationScoped;

/** Reads the account behind a cookie anew with every request, so that a change of roles or a closing takes effect at once. */
@ApplicationScoped
class SessionIdentity implements IdentityProvider<TrustedAuthenticationRequest> {
    private final SessionStore store;

    SessionIdentity(SessionStore store) {
        this.store = store;
    }

    @Override
    public Class<TrustedAuthenticationRequest> getRequestType() {
        return TrustedAuthenticationRequest.class;
    }

    @Override
    public Uni<SecurityIdentity> authenticate(
            TrustedAuthenticationRequest cookie, AuthenticationRequestContext context) {
        return context.runBlocking(() -> Identities.of(store.find(cookie.getPrincipal())));
    }
}
