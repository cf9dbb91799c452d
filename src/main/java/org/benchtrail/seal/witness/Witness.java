package org.benchtrail.seal.witness;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.integrity.AddCheckpoint;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.Cosignature;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.core.integrity.MerkleProofs;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.integrity.SigningKey;
import org.benchtrail.core.integrity.VerifierKey;
import org.benchtrail.platform.database.OwnerOnly;

/** Keeps the newest head of each log it knows, and signs what is proven to go on from it. */
final class Witness {
    private static final long PAUSE_S = 10;
    private static final int SIZE_DIFFERS = 409;
    private static final int NOT_PROVEN = 422;

    private final Path folder;
    private final SigningKey key;
    private final List<VerifierKey> logs;
    private final Clock clock;
    private final Map<String, Object> locks = new HashMap<>();

    /**
     * A witness.
     *
     * @param folder where heads and the history are kept
     * @param logs keys by which it knows logs, each under the name of the log's origin
     */
    Witness(Path folder, SigningKey key, List<VerifierKey> logs, Clock clock) {
        this.folder = folder;
        this.key = key;
        this.logs = List.copyOf(logs);
        this.clock = clock;
    }

    /** An answer by the protocol. */
    record Answer(int status, String type, String body) {
        static Answer plain(int status, String body) {
            return new Answer(status, "text/plain; charset=utf-8", body);
        }
    }

    /** Answers a request to sign; whatever it is, in the order of the protocol's checks. */
    Answer addCheckpoint(byte[] body) throws IOException {
        AddCheckpoint asked;
        Checkpoint head;
        try {
            asked = AddCheckpoint.parse(new String(body, StandardCharsets.UTF_8));
            head = Checkpoint.parse(asked.note().text());
        } catch (IllegalArgumentException e) {
            return Answer.plain(400, "The request is malformed.\n");
        }
        List<VerifierKey> known =
                logs.stream().filter(log -> log.name().equals(head.origin())).toList();
        if (known.isEmpty()) {
            return Answer.plain(404, "This log is not known here.\n");
        }
        try {
            asked.note().signers(known);
        } catch (IllegalArgumentException e) {
            return Answer.plain(403, "Not signed by a key that is trusted here.\n");
        }
        if (asked.old() > head.size()) {
            return Answer.plain(400, "The old size is larger than the new one.\n");
        }
        synchronized (lock(head.origin())) {
            return compareAndKeep(asked, head);
        }
    }

    private synchronized Object lock(String origin) {
        return locks.computeIfAbsent(origin, o -> new Object());
    }

    /** One step: nothing can come between the look at what is kept and the keeping. */
    private Answer compareAndKeep(AddCheckpoint asked, Checkpoint head) throws IOException {
        Optional<SignedNote> kept = kept(head.origin());
        Checkpoint last = kept.map(note -> Checkpoint.parse(note.text()))
                .orElse(new Checkpoint(head.origin(), 0, Hash.EMPTY_TREE));
        if (asked.old() != last.size()) {
            return new Answer(SIZE_DIFFERS, "text/x.tlog.size", last.size() + "\n");
        }
        if (!goesOn(asked, head, last)) {
            return Answer.plain(NOT_PROVEN, "It is not proven that this goes on from what was signed before.\n");
        }
        if (kept.isPresent() && last.size() == head.size()) {
            return Answer.plain(200, own(kept.get()) + "\n");
        }
        long now = clock.instant().getEpochSecond();
        if (kept.isPresent() && now - Cosignature.time(own(kept.get())) < PAUSE_S) {
            return Answer.plain(429, "Signed less than 10 seconds ago.\n");
        }
        SignedNote.Line line = key.cosign(asked.note().text(), now);
        keep(head.origin(), asked.note().with(List.of(line)));
        return Answer.plain(200, line + "\n");
    }

    private static boolean goesOn(AddCheckpoint asked, Checkpoint head, Checkpoint last) {
        if (head.size() == 0) {
            return head.root().equals(Hash.EMPTY_TREE) && asked.path().isEmpty();
        }
        return last.size() == 0
                ? asked.path().isEmpty()
                : MerkleProofs.extendsTree(last.size(), last.root(), head.size(), head.root(), asked.path());
    }

    private SignedNote.Line own(SignedNote note) {
        return note.by(key.verifier()).get(0);
    }

    private Path head(String originHash) {
        return folder.resolve("head-" + originHash);
    }

    private static String hash(String origin) {
        return Hash.sha256(origin.getBytes(StandardCharsets.UTF_8)).hex();
    }

    private Optional<SignedNote> kept(String origin) throws IOException {
        Path file = head(hash(origin));
        return Files.exists(file) ? Optional.of(SignedNote.parse(Files.readAllBytes(file))) : Optional.empty();
    }

    private void keep(String origin, SignedNote note) throws IOException {
        Files.writeString(
                folder.resolve("history"),
                note + "\n",
                StandardOpenOption.CREATE,
                StandardOpenOption.APPEND,
                StandardOpenOption.DSYNC);
        OwnerOnly.write(head(hash(origin)), note.toString());
    }

    /** The newest head that was signed for the log whose origin has that hash. */
    Answer checkpoint(String originHash) throws IOException {
        boolean known = logs.stream().anyMatch(log -> hash(log.name()).equals(originHash));
        return known && Files.exists(head(originHash))
                ? Answer.plain(200, Files.readString(head(originHash), StandardCharsets.UTF_8))
                : Answer.plain(404, "Nothing was signed here for that log.\n");
    }
}
