package org.benchtrail.training;

import jakarta.annotation.PreDestroy;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.benchtrail.catalogue.Catalogues;
import org.benchtrail.core.practice.job.OwnJob;
import org.benchtrail.core.training.OwnJobCheck;
import org.benchtrail.core.training.Ties;
import org.jboss.logging.Logger;

/**
 * Checks of mentors' jobs, one after the other beside everything else: each takes seconds, that of a desktop with every fault a minute
 * or two. How far one is, only this server knows; what a server that is stopped leaves unchecked is begun again by its author.
 */
@ApplicationScoped
class OwnJobChecks {
    private static final Logger LOG = Logger.getLogger(OwnJobChecks.class);

    private final OwnJobResults results;
    private final Catalogues catalogues;
    private final Map<OwnJobStore.Ref, Integer> running = new ConcurrentHashMap<>();
    private final ExecutorService worker = Executors.newSingleThreadExecutor(work -> {
        Thread thread = new Thread(work, "own-job-checks");
        thread.setDaemon(true);
        return thread;
    });

    OwnJobChecks(OwnJobResults results, Catalogues catalogues) {
        this.results = results;
        this.catalogues = catalogues;
    }

    /** How many of {@link OwnJobCheck#STEPS} are done; empty if that text is not being checked here. */
    Optional<Integer> progress(OwnJobStore.Ref ref) {
        return Optional.ofNullable(running.get(ref));
    }

    /** Begins, after those that were begun before; if it is going on already, it goes on. */
    void begin(OwnJobStore.Ref ref, OwnJob job) {
        if (running.putIfAbsent(ref, 0) == null) {
            worker.execute(() -> work(ref, job));
        }
    }

    private void work(OwnJobStore.Ref ref, OwnJob job) {
        try {
            var model =
                    catalogues.inForce().model(Ties.of(job.family()).category()).orElseThrow();
            results.keep(ref, OwnJobCheck.of(job, model, step -> running.put(ref, step)));
        } catch (RuntimeException e) {
            LOG.error("the check of practice job " + ref + " broke off", e);
        } finally {
            running.remove(ref);
        }
    }

    @PreDestroy
    void end() {
        worker.shutdownNow();
    }
}
