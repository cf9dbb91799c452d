package org.benchtrail.seal;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.KeyHistory;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.integrity.VerifierKey;
import org.benchtrail.core.integrity.WitnessPolicy.Party;
import org.benchtrail.core.method.Actor;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.database.OwnerOnly;
import org.jspecify.annotations.Nullable;

/**
 * Sees to it that the note beside the key is there wherever the log has heads: without it an old backup, or a rewritten one, would be
 * signed like any other. What is lost is made anew from the largest head that somebody else keeps; if nobody does, an administrator
 * says why it is to go on all the same.
 */
@ApplicationScoped
class LostNote {
    static final String GONE =
            "The note beside the key is gone, and neither a witness nor the log's folder has a head to make it anew"
                    + " from. Put it back, or an administrator says on the page of the seal why it goes on without.";

    private static final String CONFIRMED = "note-confirmed";
    private static final int LONGEST_REASON = 300;

    private final LogRows rows;
    private final LogKeys keys;
    private final Signing signing;
    private final WitnessedHeads witnessed;
    private final Incidents incidents;
    private final SealConfig config;
    private final Clock clock;
    private @Nullable Instant lostSince;

    LostNote(
            LogRows rows,
            LogKeys keys,
            Signing signing,
            WitnessedHeads witnessed,
            Incidents incidents,
            SealConfig config,
            Clock clock) {
        this.rows = rows;
        this.keys = keys;
        this.signing = signing;
        this.witnessed = witnessed;
        this.incidents = incidents;
        this.config = config;
        this.clock = clock;
    }

    /** A head, and who keeps it. */
    private record Kept(String by, SignedNote note) {
        Checkpoint head() {
            return Checkpoint.parse(note.text());
        }
    }

    /**
     * Makes the note anew if it is gone.
     *
     * @throws LogIsAhead if the largest head that is kept has more leaves than are here
     * @throws SealStopped if that is of another tree, or there is none and nobody has said that it goes on without
     */
    void seeTo(List<Party> witnesses) {
        Optional<LogRows.Signed> newest = config.keyFile().isEmpty() || Files.exists(signing.lastNote())
                ? Optional.empty()
                : QuarkusTransaction.requiringNew().call(rows::newest);
        if (newest.isEmpty()) {
            lostSince = null;
            return;
        }
        if (lostSince == null) {
            lostSince = clock.instant();
        }
        KeyHistory known = QuarkusTransaction.requiringNew().call(keys::known);
        Optional<Kept> largest = Stream.concat(ofWitnesses(witnesses, known), ofFolder(known))
                .max(Comparator.comparingLong(kept -> kept.head().size()));
        if (largest.isPresent()) {
            makeAnew(largest.get());
        } else if (isConfirmed(lostSince)) {
            write(SignedNote.parse(newest.get().note()));
        } else {
            throw new SealStopped(GONE);
        }
    }

    private Stream<Kept> ofWitnesses(List<Party> witnesses, KeyHistory known) {
        return witnesses.stream()
                .filter(witness -> !witness.address().isEmpty() && witness.key().isUnderstood())
                .flatMap(witness -> witnessed.newest(witness, known).head().stream()
                        .filter(note -> isOfKeyThatSigns(note, known))
                        .map(note -> new Kept("the witness " + witness.key().name(), note)));
    }

    private Stream<Kept> ofFolder(KeyHistory known) {
        Optional<Path> file = config.folder()
                .map(folder -> folder.resolve(LogFolder.CHECKPOINT))
                .filter(Files::exists);
        try {
            return file.isEmpty()
                    ? Stream.empty()
                    : Stream.of(new Kept("the log's folder", SignedNote.parse(Files.readAllBytes(file.get()))))
                            .filter(kept -> isOfKeyThatSigns(kept.note(), known));
        } catch (IOException | IllegalArgumentException unreadable) {
            return Stream.empty();
        }
    }

    private static boolean isOfKeyThatSigns(SignedNote note, KeyHistory known) {
        try {
            return Checkpoint.parse(note.text()).origin().equals(known.origin())
                    && !note.signers(known.good().stream()
                                    .map(VerifierKey::parse)
                                    .toList())
                            .isEmpty();
        } catch (IllegalArgumentException notSigned) {
            return false;
        }
    }

    private void makeAnew(Kept kept) {
        Checkpoint head = kept.head();
        QuarkusTransaction.requiringNew()
                .run(() -> signing.requireGoingOn("the head that " + kept.by() + " keeps", head, rows.size()));
        write(kept.note());
        QuarkusTransaction.requiringNew()
                .run(() -> incidents.found(
                        "note-lost",
                        "log",
                        "The note beside the key was gone. It was made anew from the head of " + head.size()
                                + " leaves that " + kept.by() + " keeps.",
                        clock.instant()));
    }

    private void write(SignedNote note) {
        try {
            OwnerOnly.write(signing.lastNote(), note.toString());
            lostSince = null;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Whether an administrator has said so since it was seen here that the note is gone: what was said of an earlier loss is of that. */
    private boolean isConfirmed(Instant since) {
        return QuarkusTransaction.requiringNew().call(incidents::newest).stream()
                .anyMatch(incident ->
                        incident.kind().equals(CONFIRMED) && !incident.at().isBefore(since));
    }

    /** An administrator says why the log goes on from what the database has, although nothing outside it tells that this is all. */
    @Transactional
    void confirm(String reason, Actor by) {
        Permissions.require(Permission.KEEP_LOG, by);
        String why = reason.strip();
        if (why.isEmpty() || why.length() > LONGEST_REASON) {
            throw new Invalid("reason", "Say why, in at most " + LONGEST_REASON + " characters.");
        }
        incidents.found(
                CONFIRMED,
                "log",
                "The note beside the key was gone, and nobody else kept a head. " + by.account()
                        + " says that it goes on from the head of "
                        + rows.newest().map(LogRows.Signed::size).orElse(0L) + " leaves: " + why,
                clock.instant());
    }
}
