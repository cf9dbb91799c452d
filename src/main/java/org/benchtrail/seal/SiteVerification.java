package org.benchtrail.seal;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.Frontier;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.core.integrity.HashChain;
import org.benchtrail.core.integrity.Leaf;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.integrity.VerifierKey;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.platform.RecordBroken;
import org.benchtrail.seal.VerificationRows.Finding;
import org.benchtrail.seal.VerificationRows.Run;
import org.benchtrail.ticket.TicketQueries;
import org.benchtrail.trail.Verification;
import org.jboss.logging.Logger;

/**
 * Holds the whole site against the log: the database's own guards, the signatures, every leaf and what it seals, every row of which
 * there is a record, every ticket. It fixes the size at its beginning and works through it in many short transactions, since what
 * is sealed does not change.
 */
@ApplicationScoped
class SiteVerification {
    private static final Logger LOG = Logger.getLogger(SiteVerification.class);
    private static final int LEAVES = 5_000;
    private static final int TICKETS = 200;

    /** Triggers without which something could be added or changed unseen. */
    private static final List<String> GUARDS = List.of(
            "trail_entry_stays",
            "trail_entry_follows",
            "trail_entry_is_sealed",
            "attachment_stays",
            "attachment_is_sealed",
            "seal_leaf_stays",
            "seal_node_stays",
            "checkpoint_stays",
            "site_record_stays",
            "account_record_append_only",
            "account_record_is_sealed",
            "new_account_is_sealed",
            "account_is_sealed",
            "forecast_erasure_is_sealed",
            "new_token_is_sealed",
            "token_is_sealed",
            "requester_is_sealed",
            "case_record_is_sealed",
            "case_is_sealed",
            "catalogue_version_stays",
            "catalogue_version_is_sealed",
            "known_cause_change_append_only",
            "known_cause_change_is_sealed",
            "site_limit_is_sealed",
            "site_version_stays",
            "site_version_is_sealed",
            "audit_act_stays",
            "audit_act_is_sealed",
            "chart_baseline_stays",
            "chart_baseline_is_sealed",
            "coach_trial_stays",
            "coach_trial_is_sealed",
            "coach_trial_result_stays",
            "coach_trial_result_is_sealed");

    /** A table of which every row is recorded in a stream, or in those that fit. */
    private record Recorded(String stream, String table, String key) {}

    private static final List<Recorded> RECORDED = List.of(
            new Recorded("accounts", "account_record", "id"),
            new Recorded("accounts", "account", "id"),
            new Recorded("accounts", "api_token", "id"),
            new Recorded("requesters", "requester", "id"),
            new Recorded("cases", "shop_case_record", "id"),
            new Recorded("cases", "shop_case", "id"),
            new Recorded("catalogue", "catalogue_version", "number"),
            new Recorded("knowledge", "known_cause_change", "id"),
            new Recorded("limits", "site_limit", "id"),
            new Recorded("policy", "site_version", "number"),
            new Recorded("erasures", "forecast_erasure", "id"),
            new Recorded("audit/%", "audit_act", "id"),
            new Recorded("figures", "chart_baseline", "id"),
            new Recorded("training", "coach_trial", "id"),
            new Recorded("training", "coach_trial_result", "trial"));

    private final LogRows rows;
    private final VerificationRows runs;
    private final LogKeys keys;
    private final TicketQueries tickets;
    private final Clock clock;

    SiteVerification(LogRows rows, VerificationRows runs, LogKeys keys, TicketQueries tickets, Clock clock) {
        this.rows = rows;
        this.runs = runs;
        this.keys = keys;
        this.tickets = tickets;
        this.clock = clock;
    }

    /** Begins a look, unless one is going on. */
    boolean begin(Actor by) {
        return alone(() ->
                runs.begin(by.account(), rows.newest().map(LogRows.Signed::size).orElse(0L), clock.instant()));
    }

    /** Works through the look that was begun. */
    void work(Actor by) {
        Run run = alone(() -> runs.newest()).orElseThrow();
        try {
            guards(run);
            signatures(run);
            if (leaves(run)) {
                records(run);
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

    private void found(Run run, String what, String place, String sentence) {
        alone(() -> {
            runs.find(run.id(), new Finding(what, place, sentence));
            return 0;
        });
    }

    private void guards(Run run) {
        alone(() -> runs.disabled(GUARDS))
                .forEach(
                        trigger -> found(run, "guard", trigger, "This guard of the database is gone or switched off."));
    }

    private void signatures(Run run) {
        alone(rows::newestNote).ifPresent(note -> {
            Set<VerifierKey> good =
                    alone(keys::known).good().stream().map(VerifierKey::parse).collect(Collectors.toSet());
            try {
                note.signers(good);
            } catch (IllegalArgumentException e) {
                found(run, "signature", "newest head", "It is not signed by a key of this log.");
            }
        });
    }

    /** Every leaf: its hash, its place in its stream, what it seals, and the root at every head on the way. */
    private boolean leaves(Run run) {
        Frontier frontier = Frontier.empty();
        Map<String, Long> places = new HashMap<>();
        Map<Long, String> heads = alone(() -> rows.heads(Integer.MAX_VALUE)).stream()
                .collect(Collectors.toMap(LogRows.Signed::size, LogRows.Signed::note));
        while (frontier.size() < run.size()) {
            long from = frontier.size();
            long to = Math.min(run.size(), from + LEAVES);
            List<LogRows.StoredLeaf> leaves = alone(() -> rows.stored(from, to));
            if (leaves.size() != to - from) {
                found(run, "leaf", from + " to " + to, "Leaves are missing: the log was cut or rewritten.");
                return true;
            }
            for (LogRows.StoredLeaf stored : leaves) {
                look(run, frontier.size(), stored, places);
                frontier.add(stored.leaf().leafHash());
                String head = heads.get(frontier.size());
                if (head != null && !rootOf(head).equals(frontier.root())) {
                    found(
                            run,
                            "root",
                            "head of " + frontier.size(),
                            "The leaves below it are not those that were signed.");
                }
            }
            if (!alone(() -> runs.goOn(run.id(), to, clock.instant()))) {
                return false;
            }
        }
        return true;
    }

    private static Hash rootOf(String note) {
        return Checkpoint.parse(SignedNote.parse(note).text()).root();
    }

    private void look(Run run, long index, LogRows.StoredLeaf stored, Map<String, Long> places) {
        Leaf leaf = stored.leaf();
        String place = leaf.stream() + " " + leaf.place();
        if (!leaf.leafHash().equals(stored.leafHash())) {
            found(run, "leaf", "leaf " + index, "Its hash is not that of what stands in its row.");
        }
        if (leaf.place() != places.merge(leaf.stream(), 1L, Long::sum)) {
            found(run, "stream", place, "A place of this stream is missing or there twice.");
        }
        if (stored.canonical().length == 0) {
            found(run, "record", place, "What was sealed is gone.");
        } else if (!HashChain.hash(stored.canonical()).equals(leaf.hash().hex())) {
            found(run, "record", place, "What is stored is not what was sealed.");
        }
    }

    private void records(Run run) {
        for (Recorded one : RECORDED) {
            alone(() -> runs.unlike(one.stream(), one.table(), one.key()))
                    .forEach(unlike ->
                            found(run, "row", one.table() + " " + unlike.rowKey(), "This row " + unlike.fault() + "."));
        }
        alone(runs::missingNumbers)
                .forEach(serial -> found(
                        run, "number", new TicketNumber(serial).toString(), "There is no ticket of this number."));
        alone(runs::notQueued)
                .forEach(one -> found(
                        run,
                        "not sealed",
                        one.stream(),
                        "It has " + one.entries() + " entries, and " + one.sealed() + " are sealed or wait for it."));
    }

    private void tickets(Run run, Actor by) {
        int last = 0;
        List<Integer> some;
        do {
            int after = last;
            some = alone(() -> runs.tickets(after, TICKETS));
            for (int serial : some) {
                TicketNumber number = new TicketNumber(serial);
                Verification found = verified(number, by);
                if (!found.holds()) {
                    found(run, "ticket", number.toString(), found.sentence());
                }
                last = serial;
            }
            if (!alone(() -> runs.goOn(run.id(), run.size(), clock.instant()))) {
                return;
            }
        } while (some.size() == TICKETS);
    }

    private Verification verified(TicketNumber number, Actor by) {
        try {
            return tickets.verified(number, by).verification();
        } catch (RecordBroken e) {
            return new Verification(0, false, null, String.valueOf(e.getMessage()));
        }
    }
}
