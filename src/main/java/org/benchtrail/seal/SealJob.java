package org.benchtrail.seal;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.io.IOException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.OptionalLong;
import java.util.function.Supplier;
import org.benchtrail.core.integrity.WitnessPolicy.Party;
import org.benchtrail.platform.Rounds;
import org.jboss.logging.Logger;

/** Seals, signs, and writes the folder, every few seconds and beside all acts. */
@ApplicationScoped
class SealJob {
    private static final Logger LOG = Logger.getLogger(SealJob.class);

    private final LogRows rows;
    private final Sealing sealing;
    private final Signing signing;
    private final SettingsRecord settings;
    private final CensusRecord census;
    private final Incidents incidents;
    private final LostNote note;
    private final Witnessing witnessing;
    private final LogFolder folder;
    private final SealConfig config;
    private final Clock clock;
    private final Rounds rounds = new Rounds("seal");
    private volatile String stopped = "";
    private volatile boolean failing;
    /** Whether it stands in the database, perhaps from before this server started, that the log is ahead. */
    private volatile boolean markedAhead = true;

    SealJob(
            LogRows rows,
            Sealing sealing,
            Signing signing,
            SettingsRecord settings,
            CensusRecord census,
            Incidents incidents,
            LostNote note,
            Witnessing witnessing,
            LogFolder folder,
            SealConfig config,
            Clock clock) {
        this.rows = rows;
        this.sealing = sealing;
        this.signing = signing;
        this.settings = settings;
        this.census = census;
        this.incidents = incidents;
        this.note = note;
        this.witnessing = witnessing;
        this.folder = folder;
        this.config = config;
        this.clock = clock;
    }

    void start(@Observes StartupEvent start) {
        rounds.begin(config.every(), this::lookWhetherBehind, this::round);
    }

    void stop(@Observes ShutdownEvent stop) {
        rounds.end();
    }

    /** Why nothing is signed; empty if nothing stands in the way. */
    String stopped() {
        return stopped;
    }

    /** Once through all of it. What goes wrong is told once and kept, and tried again in the next round. */
    void round() {
        round(sealing::sealAll);
    }

    /** A round that ends with that record, and leaves what is behind it to the next. */
    void roundTo(String stream, long place) {
        round(() -> sealing.sealTo(stream, place));
    }

    /** One at a time: what is sealed by one is signed by it before another seals more. */
    private synchronized void round(Supplier<OptionalLong> seal) {
        try {
            sealAndSign(seal);
            failing = false;
        } catch (IOException | RuntimeException e) {
            if (!failing) {
                LOG.warnf(e, "a round of sealing did not end; it is tried again every %s", config.every());
            }
            failing = true;
        }
    }

    /** Before anything can be recorded that would get a place that is taken. */
    private void lookWhetherBehind() {
        try {
            signing.requireNotBehind();
            List<Party> asked = witnessing.readable();
            note.seeTo(asked);
            witnessing.look(asked);
        } catch (LogIsAhead e) {
            stopAll(e);
        } catch (RuntimeException e) {
            LOG.warn("it was not found out whether the log is ahead of the database", e);
        }
    }

    /** Nothing is recorded by any door until its leaves are back. */
    private void stopAll(LogIsAhead ahead) {
        String why = ahead.sentence() + " Nothing is recorded until the leaves are put back: restore-leaves FOLDER.";
        if (!stopped.equals(why)) {
            LOG.errorf("Nothing is recorded: %s", why);
            stopped = why;
        }
        markedAhead = true;
        QuarkusTransaction.requiringNew().run(() -> rows.behind(why));
    }

    private void goOn() {
        stopped = "";
        if (markedAhead) {
            QuarkusTransaction.requiringNew().run(() -> rows.behind(null));
            markedAhead = false;
        }
    }

    private void sealAndSign(Supplier<OptionalLong> seal) throws IOException {
        try {
            signing.requireNotBehind();
            // a policy that cannot be read keeps no head from being signed: it is told when the witnesses are asked
            List<Party> asked = witnessing.readable();
            note.seeTo(asked);
            witnessing.look(asked);
            signing.recordKeys();
            settings.keep();
            census.keep(LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC));
            if (seal.get().isEmpty()) {
                return;
            }
            signing.sign();
            witnessing.ask(witnessing.witnesses());
            goOn();
            folder.write();
        } catch (LogIsAhead e) {
            stopAll(e);
        } catch (SealStopped e) {
            if (!stopped.equals(e.sentence())) {
                LOG.errorf("Nothing is signed: %s", e.sentence());
                stopped = e.sentence();
            }
            QuarkusTransaction.requiringNew()
                    .run(() -> incidents.found("not-signed", "log", e.sentence(), clock.instant()));
            sealing.sealAll();
        }
    }
}
