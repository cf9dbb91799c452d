package org.benchtrail.people;

import io.quarkus.security.AuthenticationFailedException;
import io.quarkus.security.identity.SecurityIdentity;
import io.quarkus.security.runtime.QuarkusPrincipal;
import io.quarkus.security.runtime.QuarkusSecurityIdentity;
import java.util.Optional;
import java.util.stream.Collectors;

/** Turns a person found good into what the framework passes along with the request. */
final class Identities {
    private Identities() {}

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
