package org.benchtrail.site;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.TransactionSynchronizationRegistry;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.benchtrail.core.method.Policy;
import org.benchtrail.core.site.SiteHistory;
import org.benchtrail.core.site.SiteRules;

/**
 * What the site decided, and since when. Which decision is the latest is asked of the database each time, so that a new one counts at
 * once on every node; what it says never changes and is kept.
 */
@ApplicationScoped
@Transactional
public class SiteBook {
    private final SiteVersions versions;
    private final Clock clock;
    private final TransactionSynchronizationRegistry transaction;
    private volatile SiteHistory read;

    SiteBook(SiteVersions versions, PolicyConfig config, Clock clock, TransactionSynchronizationRegistry transaction) {
        this.versions = versions;
        this.clock = clock;
        this.transaction = transaction;
        read = SiteHistory.of(config.rules());
    }

    /** The same throughout a transaction. */
    public SiteHistory history() {
        return transaction.getResource(SiteBook.class) instanceof SiteHistory asked ? asked : latest();
    }

    /** As the running transaction sees it now. */
    SiteHistory latest() {
        SiteHistory history = stored();
        transaction.putResource(SiteBook.class, history);
        return history;
    }

    private SiteHistory stored() {
        SiteHistory known = read;
        int last = versions.last();
        if (known.latest() == last) {
            return known;
        }
        // a number that is lower belongs to a database that was put back
        SiteHistory start = known.latest() < last ? known : known.upTo(0);
        List<SiteHistory.Version> all = new ArrayList<>(start.versions());
        versions.after(start.latest())
                .forEach(row -> all.add(new SiteHistory.Version(
                        row.number, row.inForce, RulesText.read(row.rules).rules())));
        SiteHistory history = new SiteHistory(all);
        read = history;
        return history;
    }

    /** As {@link #history}, and nobody decides anything else until the running transaction ends. */
    public SiteHistory kept() {
        versions.keep();
        return latest();
    }

    public SiteRules rules() {
        return history().at(now()).rules();
    }

    public Policy policy() {
        return rules().policy();
    }

    /** The zone of the site's calendar, in which its days, weeks and months begin. */
    public ZoneId zone() {
        return rules().calendar().zone();
    }

    private Instant now() {
        return clock.instant();
    }
}
