package org.benchtrail.seal;

import io.quarkus.arc.Arc;
import io.quarkus.narayana.jta.QuarkusTransaction;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;

/** Sealing, and the look at the whole site, when a test of another feature asks for it. */
public final class SealRounds {
    private static final Actor LOOKING = new Actor("looking", "Looking", Set.of(Role.ADMINISTRATOR));

    private SealRounds() {}

    /** Seals and signs what waits. */
    public static void once() {
        Arc.container().instance(SealJob.class).get().round();
    }

    /** What a look at the whole site finds that names one of these. */
    public static List<String> look(String... names) {
        SiteVerification verification =
                Arc.container().instance(SiteVerification.class).get();
        VerificationRows runs = Arc.container().instance(VerificationRows.class).get();
        verification.begin(LOOKING);
        verification.work(LOOKING);
        return QuarkusTransaction.requiringNew()
                .call(() -> runs.findings(runs.newest().orElseThrow().id()))
                .stream()
                .map(found -> found.what() + ": " + found.place() + ": " + found.sentence())
                .filter(line -> List.of(names).stream().anyMatch(line::contains))
                .toList();
    }
}
