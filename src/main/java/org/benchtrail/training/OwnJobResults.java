package org.benchtrail.training;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.transaction.Transactional;
import java.time.Clock;
import org.benchtrail.core.training.OwnJobCheck;

/** Keeps what a check came to, outside any request. */
@ApplicationScoped
class OwnJobResults {
    private final OwnJobStore store;
    private final Clock clock;

    OwnJobResults(OwnJobStore store, Clock clock) {
        this.store = store;
        this.clock = clock;
    }

    @ActivateRequestContext
    @Transactional
    void keep(OwnJobStore.Ref ref, OwnJobCheck.Result result) {
        store.check(ref, result, clock.instant());
    }
}
