package org.benchtrail.seal;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Policy;
import org.benchtrail.core.method.Redecided;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.seal.VerificationRows.Finding;
import org.benchtrail.trail.StoredTrail;
import org.benchtrail.trail.TrailEntry;
import org.benchtrail.trail.TrailStore;

/**
 * The part of a look that decides every move out of a step again, under the policy that the entry names: what somebody wrote past the
 * gate holds as a chain, and is found by this. Asked is only what went into the log after these rules did: an older release may
 * have decided by others.
 */
@ApplicationScoped
class DecisionsLook {
    private static final String TICKET = "ticket/";

    private final TrailStore trails;
    private final VerificationRows runs;
    private final Policies policies;

    DecisionsLook(TrailStore trails, VerificationRows runs, Policies policies) {
        this.trails = trails;
        this.runs = runs;
        this.policies = policies;
    }

    /** What holds for all of a look is asked once. */
    Walk begin() {
        return QuarkusTransaction.requiringNew()
                .call(() -> new Walk(runs.rulesSince(Redecided.rules()), policies.all()));
    }

    /** Through the tickets, some at a time. */
    final class Walk {
        private final Optional<Long> since;
        private final Map<String, Optional<Policy>> known;

        /** @param since the first leaf after these rules; empty if others were recorded since, or these are not sealed */
        private Walk(Optional<Long> since, Map<String, Optional<Policy>> known) {
            this.since = since;
            this.known = known;
        }

        List<Finding> look(Collection<TicketNumber> numbers) {
            if (since.isEmpty() || numbers.isEmpty()) {
                return List.of();
            }
            Map<String, Long> before = QuarkusTransaction.requiringNew()
                    .call(() -> runs.sealedBefore(
                            numbers.stream().map(number -> TICKET + number).toList(), since.orElseThrow()));
            Map<TicketNumber, StoredTrail> stored =
                    QuarkusTransaction.requiringNew().call(() -> trails.read(numbers));
            return numbers.parallelStream()
                    .flatMap(number -> Optional.ofNullable(stored.get(number)).stream()
                            .flatMap(trail ->
                                    refused(number, trail, before.getOrDefault(TICKET + number, 0L), known).stream()))
                    .toList();
        }
    }

    /** Of a trail that does not hold, or has a hole, that is said already. */
    private static List<Finding> refused(
            TicketNumber number, StoredTrail stored, long before, Map<String, Optional<Policy>> policies) {
        if (!stored.holes().isEmpty()) {
            return List.of();
        }
        try {
            List<Entry> trail = stored.entries().stream().map(TrailEntry::read).toList();
            return Redecided.of(trail, (int) before, policies).stream()
                    .map(found -> new Finding(
                            "decision",
                            TICKET + number + " " + found.move().stamp().entry(),
                            "By the rules and the policy of that day this could not be recorded: " + found.why()))
                    .toList();
        } catch (RuntimeException whateverItHolds) {
            return List.of();
        }
    }
}
