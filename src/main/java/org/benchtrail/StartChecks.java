package org.benchtrail;

import java.util.Optional;
import java.util.Set;

/**
 * What a server is not started with, because whoever is on the network could misuse it.
 *
 * @param demo whether it is the demo, whose passwords everybody knows
 * @param host where it listens
 * @param tls whether it has a certificate of its own
 * @param proxy whether it was told to trust a proxy before it, which ends TLS
 */
record StartChecks(boolean demo, String host, boolean tls, boolean proxy) {
    private static final Set<String> THIS_MACHINE = Set.of("127.0.0.1", "localhost", "::1", "[::1]");

    /** A sentence that says what is wrong and what to do; empty if it may start. */
    Optional<String> refusal() {
        if (THIS_MACHINE.contains(host)) {
            return Optional.empty();
        }
        if (demo) {
            return Optional.of("The demo's passwords are known to everybody, so it listens on this machine only."
                    + " Take QUARKUS_HTTP_HOST away, or set BENCHTRAIL_DATABASE_URL for a shop's own server.");
        }
        return tls || proxy
                ? Optional.empty()
                : Optional.of("Passwords would pass over the network in the clear: listening on " + host
                        + " takes a certificate (QUARKUS_HTTP_SSL_CERTIFICATE_FILES and QUARKUS_HTTP_SSL_CERTIFICATE_KEY_FILES), or a"
                        + " proxy that ends TLS before it (QUARKUS_HTTP_PROXY_PROXY_ADDRESS_FORWARDING=true and"
                        + " QUARKUS_HTTP_PROXY_TRUSTED_PROXIES).");
    }
}
