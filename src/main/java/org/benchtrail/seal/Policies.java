package org.benchtrail.seal;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.benchtrail.core.method.Policy;
import org.benchtrail.core.method.PolicyFingerprint;
import org.benchtrail.site.PolicyConfig;
import org.benchtrail.site.SiteBook;

/** By what the entries of this site were decided. */
@ApplicationScoped
class Policies {
    private final VerificationRows rows;
    private final SiteBook site;
    private final PolicyConfig settings;

    Policies(VerificationRows rows, SiteBook site, PolicyConfig settings) {
        this.rows = rows;
        this.site = site;
        this.settings = settings;
    }

    /**
     * All policies that there ever were, by the name that entries give them, within the running transaction; empty where a server was
     * started with values that this release does not have.
     */
    Map<String, Optional<Policy>> all() {
        Map<String, Optional<Policy>> all = new HashMap<>();
        rows.policiesRecorded().forEach(lines -> all.put(PolicyFingerprint.name(lines), read(lines)));
        Stream.concat(
                        Stream.of(settings.policy()),
                        site.history().versions().stream()
                                .map(version -> version.rules().policy()))
                .forEach(policy -> all.put(PolicyFingerprint.of(policy), Optional.of(policy)));
        return all;
    }

    private static Optional<Policy> read(String lines) {
        try {
            return Optional.of(PolicyFingerprint.read(lines));
        } catch (IllegalArgumentException ofAnotherRelease) {
            return Optional.empty();
        }
    }
}
