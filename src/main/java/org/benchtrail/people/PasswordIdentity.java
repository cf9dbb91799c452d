package org.benchtrail.people;

import io.quarkus.security.identity.AuthenticationRequestContext;
import io.quarkus.security.identity.IdentityProvider;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.identity.request.UsernamePasswordAuthenticationRequest;
import io.smallrye.mutiny.Uni;
import jakarta.enterprise.context.ApplicationScoped;

/** Checks a login and password, with lock-out. */
@ApplicationScoped
class PasswordIdentity implements IdentityProvider<UsernamePasswordAuthenticationRequest> {
    private final SignIn signIn;

    PasswordIdentity(SignIn signIn) {
        this.signIn = signIn;
    }

    @Override
    public Class<UsernamePasswordAuthenticationRequest> getRequestType() {
        return UsernamePasswordAuthenticationRequest.class;
    }

    @Override
    public Uni<SecurityIdentity> authenticate(
            UsernamePasswordAuthenticationRequest typed, AuthenticationRequestContext context) {
        String password = new String(typed.getPassword().getPassword());
        return context.runBlocking(() -> Identities.of(signIn.byPassword(typed.getUsername(), password)));
    }
}
