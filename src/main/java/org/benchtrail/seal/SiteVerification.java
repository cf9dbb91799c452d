package org.benchtrail.seal;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.runtime.ShutdownEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.function.Function;
import java.util.stream.Stream;
import org.benchtrail.core.integrity.Hole;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.platform.LongWork;
import org.benchtrail.platform.RecordBroken;
import org.benchtrail.seal.VerificationRows.Finding;
import org.benchtrail.seal.VerificationRows.Run;
import org.benchtrail.ticket.TicketQueries;
import org.benchtrail.trail.Verification;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/**
 * Holds the whole site against the log: the database's own guards, the signatures, every leaf and what it seals, every row of which
 * there is a record, every ticket. It fixes the size at its beginning and works through it in many short transactions, since what
 * is sealed does not change.
 */
@ApplicationScoped
class SiteVerification {
    private static final Logger LOG = Logger.getLogger(SiteVerification.class);
    private static final int TICKETS = 200;

    /** A table of which every row is recorded in a stream, or in those that fit. */
    private record Recorded(String stream, String table, String key) {}

    private static final List<Recorded> RECORDED = List.of(
            new Recorded("accounts", "account_record", "id"),
            new Recorded("accounts", "account", "id"),
            new Recorded("accounts", "api_token", "id"),
            new Recorded("census", "ticket_counter", "one"),
            new Recorded("requesters", "requester", "id"),
            new Recorded("cases", "shop_case_record", "id"),
            new Recorded("cases", "shop_case", "id"),
            new Recorded("catalogue", "catalogue_version", "number"),
            new Recorded("knowledge", "known_cause_change", "id"),
            new Recorded("knowledge", "known_cause", "id"),
            new Recorded("limits", "site_limit", "id"),
            new Recorded("incidents", "mending", "id"),
            new Recorded("policy", "site_version", "number"),
            new Recorded("erasures", "forecast_erasure", "id"),
            new Recorded("erasures", "erased_words", "id"),
            new Recorded("audit/%", "audit_act", "id"),
            new Recorded("audit/exports", "export_given", "id"),
            new Recorded("figures", "chart_baseline", "id"),
            new Recorded("training", "coach_trial", "id"),
            new Recorded("training", "coach_trial_result", "trial"));

    private final LogRows rows;
    private final VerificationRows runs;
    private final Guards guards;
    private final LogLook log;
    private final KeptHeadsLook kept;
    private final Witnessing witnessing;
    private final QuorumLook quorum;
    private final DecisionsLook decisions;
    private final TimeStampLook stamps;
    private final TicketQueries tickets;
    private final Clock clock;
    /** The look that this server has begun; 0 if none goes on. */
    private volatile long own;

    SiteVerification(
            LogRows rows,
            VerificationRows runs,
            Guards guards,
            LogLook log,
            KeptHeadsLook kept,
            Witnessing witnessing,
            QuorumLook quorum,
            DecisionsLook decisions,
            TimeStampLook stamps,
            TicketQueries tickets,
            Clock clock) {
        this.rows = rows;
        this.runs = runs;
        this.guards = guards;
        this.log = log;
        this.kept = kept;
        this.witnessing = witnessing;
        this.quorum = quorum;
        this.decisions = decisions;
        this.stamps = stamps;
        this.tickets = tickets;
        this.clock = clock;
    }

    /** Begins a look, unless one is going on. */
    boolean begin(Actor by) {
        return alone(() -> {
            boolean begun = runs.begin(
                    by.account(), rows.newest().map(LogRows.Signed::size).orElse(0L), clock.instant());
            if (begun) {
                own = runs.newest().orElseThrow().id();
            }
            return begun;
        });
    }

    /** How the newest look stands. */
    record Looked(long size, long done, boolean stopped, List<Finding> findings) {}

    Looked looked() {
        return alone(() -> {
            Run run = runs.newest().orElseThrow();
            return new Looked(run.size(), run.done(), run.stopped(), runs.findings(run.id()));
        });
    }

    /** A look of this server does not outlive it: it is left at the next place, and begun anew by whoever is there. */
    void interrupt(@Observes ShutdownEvent stop) {
        long look = own;
        if (look > 0) {
            alone(() -> {
                runs.interrupt(look);
                return 0;
            });
        }
    }

    /** Works through the look that was begun. */
    void work(Actor by) {
        work(by, new LongWork(line -> {}));
    }

    /** As {@link #work(Actor)}, for whoever waits for it. */
    void work(Actor by, LongWork progress) {
        Run run = alone(() -> runs.newest()).orElseThrow();
        try {
            found(run, alone(guards::unlike), Function.identity());
            if (log.look(run, some -> found(run, some, Function.identity()), progress)) {
                found(run, kept.look(witnessing.readable()), Function.identity());
                found(run, quorum.look(), Function.identity());
                found(run, stamps.look(), Function.identity());
                records(run);
                unsealed(run);
                tickets(run, by);
            }
        } catch (RuntimeException e) {
            LOG.warn("the look at the whole site did not come to its end", e);
            stop();
        }
        alone(() -> {
            runs.end(run.id(), clock.instant());
            return 0;
        });
        own = 0;
    }

    /** Ends the look that is going on, if there is one, at the next place where it can be left. */
    void stop() {
        alone(() -> {
            runs.stop();
            return 0;
        });
    }

    private static <T> T alone(Callable<T> work) {
        return QuarkusTransaction.requiringNew().call(work);
    }

    /** The streams that every site has; those of audits are begun with the audit. */
    private static List<String> streams() {
        return Stream.concat(
                        Stream.of("keys", "incidents"),
                        RECORDED.stream().map(Recorded::stream).filter(stream -> !stream.startsWith("audit/")))
                .distinct()
                .toList();
    }

    /** Keeps in one transaction what one question found. */
    private <T> void found(Run run, List<T> found, Function<T, Finding> told) {
        if (!found.isEmpty()) {
            alone(() -> {
                runs.find(run.id(), found.stream().map(told).toList());
                return 0;
            });
        }
    }

    private void records(Run run) {
        for (Recorded one : RECORDED) {
            found(
                    run,
                    alone(() -> runs.unlike(one.stream(), one.table(), one.key())),
                    unlike -> new Finding(
                            "row", one.table() + " " + unlike.rowKey(), "This row " + unlike.fault() + "."));
        }
        found(run, alone(runs::missingNumbers), gap -> new Finding("number", number(gap.first()), missing(gap)));
        named(run, runs::counter, "number", "It does not stand at the highest number of a ticket.");
        named(run, runs::strays, "disclosure", "This salt belongs to nothing that its record keeps apart.");
        named(run, runs::erasedAlone, "row", "It was erased, and no record says who decided so.");
        named(run, runs::marks, "row", "Whether it is marked as broken is not what the incidents say.");
        for (Map.Entry<String, List<Hole>> lost : alone(rows::holes).entrySet()) {
            found(run, lost.getValue(), hole -> new Finding("hole", lost.getKey(), hole.sentence()));
        }
        named(run, runs::filesUnlike, "file", "The file is not the one that was sealed, or one of the two is gone.");
    }

    /** A question that answers with places, of which each is wrong in the same way. */
    private void named(Run run, Callable<List<String>> asked, String what, String sentence) {
        found(run, alone(asked), place -> new Finding(what, place, sentence));
    }

    private static boolean isNumber(long serial) {
        return serial > 0 && serial <= TicketNumber.LAST;
    }

    private static String number(long serial) {
        return isNumber(serial) ? new TicketNumber((int) serial).toString() : "" + serial;
    }

    private static String missing(VerificationRows.Gap gap) {
        return gap.first() == gap.last()
                ? "There is no ticket of this number."
                : "There is no ticket of this number and of the next ones up to " + number(gap.last()) + ".";
    }

    /** What is not sealed yet has to wait for it, as it is. */
    private void unsealed(Run run) {
        found(
                run,
                alone(runs::notQueued),
                one -> new Finding(
                        "not sealed",
                        one.stream(),
                        "It has " + one.entries() + " entries, and " + one.sealed() + " are sealed or wait for it."));
        found(
                run,
                alone(() -> runs.endsUnlike(streams())),
                stream -> new Finding(
                        "stream", "stream_head " + stream, "The stream's end is not that of its last record."));
        named(run, runs::recordsNotSealed, "not sealed", "It is neither sealed, nor does it wait for it.");
        found(
                run,
                alone(runs::queueUnlike),
                place -> new Finding(
                        "not sealed", "seal_queue " + place, "What waits to be sealed is not what is stored."));
    }

    private void tickets(Run run, Actor by) {
        DecisionsLook.Walk decided = decisions.begin();
        int last = Integer.MIN_VALUE;
        List<Integer> some;
        do {
            int after = last;
            some = alone(() -> runs.tickets(after, TICKETS));
            found(run, broken(some, by), Function.identity());
            found(run, decided.look(numbers(some)), Function.identity());
            last = some.isEmpty() ? last : some.get(some.size() - 1);
            if (!alone(() -> runs.goOn(run.id(), run.size(), clock.instant()))) {
                return;
            }
        } while (some.size() == TICKETS);
    }

    private static List<TicketNumber> numbers(List<Integer> serials) {
        return serials.stream()
                .filter(SiteVerification::isNumber)
                .map(TicketNumber::new)
                .toList();
    }

    /** Many tickets at once; where a row cannot be read, each of them by itself. */
    private List<Finding> broken(List<Integer> serials, Actor by) {
        Map<TicketNumber, Verification> verified = verified(numbers(serials), by);
        List<Finding> broken = new ArrayList<>();
        for (int serial : serials) {
            Verification found = isNumber(serial)
                    ? verified.get(new TicketNumber(serial))
                    : new Verification(0, false, null, "No ticket has such a number.");
            Verification own = found == null ? verified(new TicketNumber(serial), by) : found;
            if (!own.holds()) {
                broken.add(new Finding("ticket", number(serial), own.sentence(), leaf(serial, own)));
            }
        }
        return broken;
    }

    /** Where the first entry that does not hold, or the last one, stands in the log. */
    private @Nullable Long leaf(int serial, Verification found) {
        if (!isNumber(serial) || found.brokenAt() == null) {
            return null;
        }
        return alone(() -> rows.places("ticket/" + number(serial))).stream()
                .filter(one -> one.place() == found.brokenAt())
                .map(LogRows.PlaceRow::index)
                .findFirst()
                .orElse(null);
    }

    private Map<TicketNumber, Verification> verified(List<TicketNumber> numbers, Actor by) {
        try {
            return tickets.verified(numbers, by);
        } catch (RuntimeException whateverStandsInARow) {
            LOG.infof(whateverStandsInARow, "of %s tickets a row cannot be read", numbers.size());
            return Map.of();
        }
    }

    private Verification verified(TicketNumber number, Actor by) {
        try {
            return tickets.verified(number, by).verification();
        } catch (RecordBroken e) {
            return new Verification(0, false, null, String.valueOf(e.getMessage()));
        } catch (RuntimeException whateverStandsInTheRow) {
            LOG.infof(whateverStandsInTheRow, "the row of ticket %s cannot be read", number);
            return new Verification(0, false, null, "The ticket's row cannot be read.");
        }
    }
}
