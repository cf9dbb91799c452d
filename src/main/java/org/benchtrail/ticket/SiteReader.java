package org.benchtrail.ticket;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Optional;
import org.benchtrail.bench.BenchRun;
import org.benchtrail.core.advice.SheetReader;
import org.benchtrail.core.method.identify.BenchResultAttached;

/** Reads job sheets with what this site has set, and with the bench of this server. */
@ApplicationScoped
public class SiteReader implements SheetReader {
    private final PolicyConfig policy;

    SiteReader(PolicyConfig policy) {
        this.policy = policy;
    }

    @Override
    public Optional<String> mains() {
        return policy.mains();
    }

    @Override
    public double repairOdds() {
        return policy.repairOdds().doubleValue();
    }

    @Override
    public Optional<Worked> again(BenchResultAttached attached) {
        return BenchRun.worked(attached);
    }
}
