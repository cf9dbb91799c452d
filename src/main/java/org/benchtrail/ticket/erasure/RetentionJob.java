package org.benchtrail.ticket.erasure;

import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import org.benchtrail.platform.Rounds;
import org.benchtrail.ticket.RequesterErasure;
import org.jboss.logging.Logger;

/** Erases every hour who is kept no longer, where the site has set how long that is. */
@ApplicationScoped
class RetentionJob {
    private static final Logger LOG = Logger.getLogger(RetentionJob.class);
    private static final Duration EVERY = Duration.ofHours(1);
    private static final int AT_ONCE = 100;

    private final RequesterErasure erasure;
    private final RequesterConfig config;
    private final Clock clock;
    private final Rounds rounds = new Rounds("retention");

    RetentionJob(RequesterErasure erasure, RequesterConfig config, Clock clock) {
        this.erasure = erasure;
        this.config = config;
        this.clock = clock;
    }

    void start(@Observes StartupEvent start) {
        config.keptFor().ifPresent(kept -> rounds.begin(EVERY, () -> round(kept)));
    }

    void stop(@Observes ShutdownEvent stop) {
        rounds.end();
    }

    void round(Duration kept) {
        try {
            Instant before = clock.instant().minus(kept);
            String reason = "kept for " + kept.toDays() + " days after the last ticket ended, as this server is set";
            int erased;
            do {
                erased = erasure.eraseUnneeded(before, AT_ONCE, reason);
            } while (erased == AT_ONCE && !Thread.currentThread().isInterrupted());
        } catch (RuntimeException e) {
            LOG.warnf(e, "who is kept no longer was not erased; it is tried again in an hour");
        }
    }
}
