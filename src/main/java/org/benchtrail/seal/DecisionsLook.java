package org.benchtrail.seal;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Policy;
import org.benchtrail.core.method.Redecided;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.seal.VerificationRows.Finding;
import org.benchtrail.site.PolicyConfig;
import org.benchtrail.site.PolicyFingerprint;
import org.benchtrail.site.SiteBook;
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
    private final SiteBook site;
    private final PolicyConfig settings;

    DecisionsLook(TrailStore trails, VerificationRows runs, SiteBook site, PolicyConfig settings) {
        this.trails = trails;
        this.runs = runs;
        this.site = site;
        this.settings = settings;
    }

    /** Some tickets at once, whose trails were looked at. */
    List<Finding> look(Collection<TicketNumber> numbers) {
        Map<String, Long> before = QuarkusTransaction.requiringNew()
                .call(() -> runs.decidedBefore(
                        numbers.stream().map(number -> TICKET + number).toList(), Redecided.rules()));
        List<TicketNumber> asked =
                numbers.stream().filter(n -> before.containsKey(TICKET + n)).toList();
        if (asked.isEmpty()) {
            return List.of();
        }
        Map<TicketNumber, StoredTrail> stored =
                QuarkusTransaction.requiringNew().call(() -> trails.read(asked));
        Map<String, Optional<Policy>> policies = policies();
        return asked.parallelStream()
                .flatMap(number -> Optional.ofNullable(stored.get(number)).stream()
                        .flatMap(trail ->
                                refused(number, trail, before.getOrDefault(TICKET + number, 0L), policies).stream()))
                .toList();
    }

    /** Of what servers were started with before, only the names are known. */
    private Map<String, Optional<Policy>> policies() {
        Map<String, Optional<Policy>> policies = new HashMap<>();
        QuarkusTransaction.requiringNew()
                .call(runs::policiesNamed)
                .forEach(name -> policies.put(name, Optional.empty()));
        Stream.concat(
                        Stream.of(settings.policy()),
                        site.history().versions().stream()
                                .map(version -> version.rules().policy()))
                .forEach(policy -> policies.put(PolicyFingerprint.of(policy), Optional.of(policy)));
        return policies;
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
                            found.sentence()))
                    .toList();
        } catch (RuntimeException whateverItHolds) {
            return List.of();
        }
    }
}
