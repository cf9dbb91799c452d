package org.benchtrail.audit;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.benchtrail.catalogue.Catalogues;
import org.benchtrail.core.audit.AuditAct.Item;
import org.benchtrail.core.audit.AuditAct.LotFrozen;
import org.benchtrail.core.audit.AuditAct.SampleDrawn;
import org.benchtrail.core.audit.AuditAct.SeedDrawn;
import org.benchtrail.core.audit.AuditLot;
import org.benchtrail.core.audit.AuditPlan;
import org.benchtrail.core.audit.AuditRules;
import org.benchtrail.core.audit.Draw;
import org.benchtrail.core.audit.LotSignals;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.people.Directory;
import org.benchtrail.people.Permission;
import org.benchtrail.platform.Rounds;
import org.benchtrail.seal.Heads;
import org.benchtrail.seal.SealNow;
import org.benchtrail.site.SiteBook;
import org.jboss.logging.Logger;

/**
 * What the server itself does in an audit, so that nobody chooses its moment: it freezes the lot when the period has ended, takes the
 * first head that comes after the freeze, and draws.
 */
@ApplicationScoped
class LotJob {
    private static final Logger LOG = Logger.getLogger(LotJob.class);

    /** What was begun before the end of the period has been committed by then. */
    private static final Duration SETTLED = Duration.ofSeconds(30);

    private final LotRows rows;
    private final AuditActs acts;
    private final AuditedTickets tickets;
    private final Directory people;
    private final Heads heads;
    private final SealNow seal;
    private final SiteBook site;
    private final Catalogues catalogues;
    private final AuditConfig config;
    private final Clock clock;
    private final Rounds rounds = new Rounds("audit");

    LotJob(
            LotRows rows,
            AuditActs acts,
            AuditedTickets tickets,
            Directory people,
            Heads heads,
            SealNow seal,
            SiteBook site,
            Catalogues catalogues,
            AuditConfig config,
            Clock clock) {
        this.rows = rows;
        this.acts = acts;
        this.tickets = tickets;
        this.people = people;
        this.heads = heads;
        this.seal = seal;
        this.site = site;
        this.catalogues = catalogues;
        this.config = config;
        this.clock = clock;
    }

    void start(@Observes StartupEvent start) {
        // what is out of its range stops the start, and not the first freeze
        config.signals().numbers();
        rounds.begin(config.every(), this::round);
    }

    void stop(@Observes ShutdownEvent stop) {
        rounds.end();
    }

    /** Takes every lot as far as it goes by itself. */
    void round() {
        try {
            Instant settled = clock.instant().minus(SETTLED);
            List<LotRows.Unfinished> unfinished =
                    QuarkusTransaction.requiringNew().call(() -> rows.unfinished(settled));
            unfinished.forEach(lot -> tried(lot.id(), () -> taken(lot)));
            QuarkusTransaction.requiringNew().call(this::left).forEach(id -> tried(id, () -> acts.takeBack(id)));
        } catch (RuntimeException e) {
            LOG.warnf(e, "audits did not go on; it is tried again every %s", config.every());
        }
    }

    /** One that does not go on keeps no other from it. */
    private void tried(String id, Runnable work) {
        try {
            work.run();
        } catch (RuntimeException e) {
            LOG.warnf(e, "audit %s did not go on; it is tried again every %s", id, config.every());
        }
    }

    /** Lots in which somebody holds a review who may not review any more. */
    private Set<String> left() {
        List<LotRows.Holder> holders = rows.holders();
        if (holders.isEmpty()) {
            return Set.of();
        }
        Set<String> may =
                people.allowed(Permission.REVIEW).stream().map(Actor::account).collect(Collectors.toSet());
        return holders.stream()
                .filter(h -> !may.contains(h.reviewer()))
                .map(LotRows.Holder::lot)
                .collect(Collectors.toSet());
    }

    /** A list that is frozen is sealed at once, as the last leaf of its head. */
    private void taken(LotRows.Unfinished lot) {
        if (lot.stated()) {
            seal.all();
        }
        QuarkusTransaction.requiringNew().run(() -> goOn(lot.id()));
        if (lot.stated()) {
            long place = QuarkusTransaction.requiringNew()
                    .call(() -> rows.lot(lot.id()).frozenPlace());
            seal.upTo("audit/" + lot.id(), place);
        }
    }

    private void goOn(String id) {
        AuditLot lot = acts.locked(id);
        if (lot.state() == AuditLot.State.STATED) {
            freeze(lot);
        } else if (lot.state() == AuditLot.State.FROZEN) {
            draw(lot);
        }
    }

    private void freeze(AuditLot lot) {
        AuditRules.freeze(lot, clock.instant());
        AuditPlan plan = lot.plan();
        LotRows.Open open = rows.open(plan.until());
        LotSignals signals = new LotSignals(usualMinutes(), config.signals().numbers());
        List<Item> items = tickets.items(rows.ended(plan.from(), plan.until()), signals);
        acts.append(
                lot,
                new LotFrozen(
                        items,
                        (int) open.tickets(),
                        open.oldest(),
                        config.signals().numbers()),
                Stamp.SERVER);
        rows.add(lot.id(), signals.all(plan.from(), plan.until(), site.history().workingTime()));
    }

    /** Of the check that answers a finding, by the catalogue in force. */
    private ToDoubleFunction<String> usualMinutes() {
        Map<String, Double> minutes = new HashMap<>();
        catalogues.inForce().figures().values().stream()
                .flatMap(f -> f.category().findings().stream())
                .forEach(f -> minutes.merge(f.id(), f.minutes(), Math::min));
        return finding -> minutes.getOrDefault(finding, 0.0);
    }

    private void draw(AuditLot lot) {
        String witness = lot.plan().witness();
        heads.firstAfter("audit/" + lot.id(), lot.frozenPlace(), witness).ifPresent(head -> {
            AuditRules.seed(lot);
            String seed = Draw.of(
                            head.note().getBytes(StandardCharsets.UTF_8),
                            lot.plan().bytes())
                    .seed()
                    .hex();
            AuditLot seeded = acts.append(lot, new SeedDrawn(head.size(), head.note(), witness, seed), Stamp.SERVER);
            AuditRules.sample(seeded);
            acts.append(seeded, new SampleDrawn(seeded.sample()), Stamp.SERVER);
        });
    }
}
