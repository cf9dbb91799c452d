package org.benchtrail.seal;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.Frontier;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.integrity.SigningKey;
import org.benchtrail.core.integrity.TreeReader;
import org.benchtrail.platform.database.OwnerOnly;

/**
 * Signs the head of what is sealed. Beside the key stands the last note that was signed: nothing is signed that does not go on from it,
 * so that whoever owns the database alone gets no rewritten tree signed.
 */
@ApplicationScoped
class Signing {
    private final LogRows rows;
    private final LogKeys keys;
    private final SealConfig config;
    private final Clock clock;

    Signing(LogRows rows, LogKeys keys, SealConfig config, Clock clock) {
        this.rows = rows;
        this.keys = keys;
        this.config = config;
        this.clock = clock;
    }

    /** Records the keys of the settings, if they are new: this is sealed before it is signed with them. */
    void recordKeys() {
        QuarkusTransaction.requiringNew().run(() -> {
            if (rows.lock()) {
                keys.signing();
            }
        });
    }

    /**
     * The log may not be larger by the note beside the key, or by the folder that the settings name, than it is here.
     *
     * @throws LogIsAhead if it is
     */
    void requireNotBehind() {
        if (config.keyFile().isPresent()) {
            requireNotBehind("the note beside the key", lastNote());
        }
        config.folder().ifPresent(folder -> requireNotBehind("the log's folder", folder.resolve(LogFolder.CHECKPOINT)));
    }

    private void requireNotBehind(String what, Path note) {
        long size = Files.exists(note) ? sizeOf(note) : 0;
        long here = QuarkusTransaction.requiringNew().call(rows::size);
        if (size > here) {
            throw new LogIsAhead("By " + what + " there are " + size + " leaves; the database has " + here + ".");
        }
    }

    private static long sizeOf(Path file) {
        try {
            return Checkpoint.parse(SignedNote.parse(Files.readAllBytes(file)).text())
                    .size();
        } catch (IOException | IllegalArgumentException unreadable) {
            // what cannot be read is told when it is signed
            return 0;
        }
    }

    /**
     * Signs and publishes the head, if there is a new one.
     *
     * @throws SealStopped if it does not go on from what was signed before
     */
    Optional<SignedNote> sign() {
        return QuarkusTransaction.requiringNew().call(() -> rows.lock() ? signNew() : Optional.empty());
    }

    private Optional<SignedNote> signNew() {
        List<SigningKey> signers = keys.signing();
        Frontier frontier = rows.frontier((level, n, hash) -> {});
        Optional<LogRows.Signed> before = rows.newest();
        if (signers.isEmpty()
                || frontier.size() == 0
                || before.filter(b -> b.size() == frontier.size()).isPresent()) {
            return Optional.empty();
        }
        Hash root = frontier.root();
        requireGoingOn("the leaves that are stored", new Checkpoint("tree", frontier.size(), root), frontier.size());
        before.ifPresent(signed -> requireGoingOn(
                "the last checkpoint",
                Checkpoint.parse(SignedNote.parse(signed.note()).text()),
                frontier.size()));
        Path last = lastNote();
        if (Files.exists(last)) {
            SignedNote note = readLast(last);
            requireOurs(note, signers);
            requireGoingOn("the note beside the key", Checkpoint.parse(note.text()), frontier.size());
        }
        String text = new Checkpoint(signers.get(0).verifier().name(), frontier.size(), root).text();
        SignedNote note =
                new SignedNote(text, signers.stream().map(key -> key.sign(text)).toList());
        try {
            OwnerOnly.write(last, note.toString());
            if (config.nextKeyFile().isPresent()) {
                OwnerOnly.write(beside(config.nextKeyFile().get()), note.toString());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        rows.publish(new LogRows.Signed(frontier.size(), clock.instant(), note.toString()));
        return Optional.of(note);
    }

    Path lastNote() {
        return beside(config.keyFile().orElseThrow());
    }

    private static Path beside(Path key) {
        return key.resolveSibling(key.getFileName() + ".last");
    }

    private static SignedNote readLast(Path last) {
        try {
            return SignedNote.parse(Files.readString(last, StandardCharsets.UTF_8));
        } catch (IOException | IllegalArgumentException e) {
            throw new SealStopped("The last note that was signed, beside the key, cannot be read: " + e.getMessage());
        }
    }

    private static void requireOurs(SignedNote note, List<SigningKey> signers) {
        try {
            note.signers(signers.stream().map(SigningKey::verifier).toList());
        } catch (IllegalArgumentException e) {
            throw new SealStopped("The last note that was signed, beside the key, is not signed by this key.");
        }
    }

    /**
     * The tree as it is stored has to have that root at that size; within the running transaction.
     *
     * @param from whose head it is
     * @param size of the tree as it is stored
     */
    void requireGoingOn(String from, Checkpoint earlier, long size) {
        if (earlier.size() > size) {
            throw new LogIsAhead(
                    "By " + from + " there are " + earlier.size() + " leaves; the database has " + size + ".");
        }
        if (earlier.size() > 0 && !rootAt(earlier.size()).equals(earlier.root())) {
            throw new SealStopped(
                    "The leaves up to " + earlier.size() + " are not those of " + from + ": the log was rewritten.");
        }
    }

    private Hash rootAt(long size) {
        try {
            return new TreeReader(size, rows).root();
        } catch (IllegalArgumentException e) {
            throw new SealStopped("Leaves below " + size + " are missing: the log was rewritten.");
        }
    }
}
