package org.benchtrail.seal;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.platform.Rounds;
import org.jboss.logging.Logger;

/** Looks at the whole site that nobody asks for: one a week, and those anew that were interrupted. One server of several begins each. */
@ApplicationScoped
class SiteLooks {
    static final Actor SERVER = new Actor(Stamp.SERVER, "The server", Set.of(Role.ADMINISTRATOR));

    private static final Logger LOG = Logger.getLogger(SiteLooks.class);
    private static final Duration ASKED = Duration.ofMinutes(1);

    /** One that was made anew, and interrupted again, waits so long: it may be what ended the server. */
    private static final Duration PATIENCE = Duration.ofHours(1);

    private final SiteVerification verification;
    private final VerificationRows runs;
    private final SealConfig config;
    private final Clock clock;
    private final Rounds rounds = new Rounds("look");

    SiteLooks(SiteVerification verification, VerificationRows runs, SealConfig config, Clock clock) {
        this.verification = verification;
        this.runs = runs;
        this.config = config;
        this.clock = clock;
    }

    void start(@Observes StartupEvent start) {
        if (!config.every().isZero()) {
            rounds.begin(ASKED, () -> round(config.lookEvery()));
        }
    }

    void stop(@Observes ShutdownEvent stop) {
        rounds.end();
    }

    private void round(Duration each) {
        try {
            lookIfDue(each);
        } catch (RuntimeException e) {
            LOG.warn("no look at the whole site was begun; it is tried again", e);
        }
    }

    /**
     * Looks if it is time.
     *
     * @param each after the beginning of the last look; none by themselves at zero, but those that were interrupted
     * @return whether it did
     */
    boolean lookIfDue(Duration each) {
        Instant now = clock.instant();
        Instant before = each.isZero() ? Instant.EPOCH : now.minus(each);
        boolean due = QuarkusTransaction.requiringNew().call(() -> runs.isDue(now, before, now.minus(PATIENCE)));
        if (!due || !verification.begin(SERVER)) {
            return false;
        }
        verification.work(SERVER);
        return true;
    }
}
