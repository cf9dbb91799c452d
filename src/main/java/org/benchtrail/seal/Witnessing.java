package org.benchtrail.seal;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.benchtrail.core.integrity.AddCheckpoint;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.Cosignature;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.core.integrity.KeyHistory;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.integrity.TreeReader;
import org.benchtrail.core.integrity.VerifierKey;
import org.benchtrail.core.integrity.WitnessPolicy;
import org.benchtrail.core.integrity.WitnessPolicy.Party;
import org.jboss.logging.Logger;

/** Shows new heads to the witnesses of the site's policy, and keeps what they sign (C2SP tlog-witness). */
@ApplicationScoped
class Witnessing {
    private static final Logger LOG = Logger.getLogger(Witnessing.class);
    private static final Duration PATIENCE = Duration.ofSeconds(10);
    private static final long LONGEST_PAUSE_S = 300;
    /** A witness is looked at again after so long. */
    private static final Duration EACH = Duration.ofHours(1);

    private static final Duration AGAIN = Duration.ofMinutes(5);
    private static final Duration OBJECTING = Duration.ofSeconds(10);
    private static final int SIGNED = 200;
    private static final int MALFORMED = 400;
    private static final int SIZE_DIFFERS = 409;
    private static final int NOT_PROVEN = 422;
    private static final int NO_ANSWER = 0;

    private final LogRows rows;
    private final WitnessRows kept;
    private final LogKeys keys;
    private final Signing signing;
    private final WitnessedHeads heads;
    private final SealConfig config;
    private final Clock clock;
    private final HttpClient http =
            HttpClient.newBuilder().connectTimeout(PATIENCE).build();
    private final Map<String, Pause> pauses = new ConcurrentHashMap<>();
    /** When each is looked at next. */
    private final Map<VerifierKey, Instant> due = new ConcurrentHashMap<>();
    /** Why nothing may be signed, by what each says, until it says otherwise. */
    private final Map<VerifierKey, SealStopped> objections = new ConcurrentHashMap<>();
    /** The head for which each said that it was asked wrongly. */
    private final Map<VerifierKey, Long> malformed = new ConcurrentHashMap<>();

    Witnessing(
            LogRows rows,
            WitnessRows kept,
            LogKeys keys,
            Signing signing,
            WitnessedHeads heads,
            SealConfig config,
            Clock clock) {
        this.keys = keys;
        this.signing = signing;
        this.heads = heads;
        this.rows = rows;
        this.kept = kept;
        this.config = config;
        this.clock = clock;
    }

    /** How long a witness that did not sign is left alone: 1, 2, 4 ... 300 s. */
    private record Pause(Instant until, long seconds) {}

    private record Answered(int status, String body) {}

    /** The witnesses that the policy of the settings names; none without one. */
    List<Party> witnesses() throws IOException {
        return config.policyFile().isEmpty()
                ? List.of()
                : WitnessPolicy.parse(Files.readString(config.policyFile().get(), StandardCharsets.UTF_8))
                        .witnesses();
    }

    /** As {@link #witnesses()}; none where the policy cannot be read, which is told elsewhere. */
    List<Party> readable() {
        try {
            return witnesses();
        } catch (IOException | IllegalArgumentException unreadable) {
            return List.of();
        }
    }

    /** Their keys, as signatures are kept by them; none where the policy cannot be read, which is told elsewhere. */
    String[] keys() {
        return readable().stream().map(party -> party.key().toString()).toArray(String[]::new);
    }

    /**
     * Holds the log against the newest heads that its witnesses keep: each at the start and every hour, and one that has objected to a
     * head all the time, until it objects no more.
     *
     * @throws SealStopped if one has seen leaves that are not here, or another tree
     */
    void look(List<Party> witnesses) {
        if (witnesses.stream().noneMatch(Witnessing::isAsked)) {
            return;
        }
        KeyHistory known = QuarkusTransaction.requiringNew().call(keys::known);
        if (known.origin() == null) {
            return;
        }
        for (Party witness : witnesses) {
            if (isAsked(witness) && !clock.instant().isBefore(due.getOrDefault(witness.key(), Instant.MIN))) {
                look(witness, known);
            }
        }
        for (Party witness : witnesses) {
            SealStopped objection = objections.get(witness.key());
            if (objection != null) {
                throw objection;
            }
        }
    }

    private void look(Party witness, KeyHistory known) {
        boolean objects = objections.containsKey(witness.key());
        try {
            WitnessedHeads.Answer answer = heads.newest(witness, known);
            answer.head().ifPresent(note -> requireGoingOnFrom(witness, Checkpoint.parse(note.text())));
            if (objects && answer.head().isEmpty()) {
                ask(witness, last(witness), true);
            } else {
                objections.remove(witness.key());
            }
            due.put(witness.key(), clock.instant().plus(answer.answered() ? EACH : AGAIN));
        } catch (SealStopped objection) {
            objects(witness, objection);
        }
    }

    /** Nothing is signed until the witness objects no more. */
    private void objects(Party witness, SealStopped objection) {
        objections.put(witness.key(), objection);
        due.put(witness.key(), clock.instant().plus(OBJECTING));
    }

    private void requireGoingOnFrom(Party witness, Checkpoint head) {
        QuarkusTransaction.requiringNew()
                .run(() -> signing.requireGoingOn(
                        "the head that the witness " + witness.key().name() + " keeps", head, rows.size()));
    }

    /** Whether it has an address, and signs in a way that can be verified here. */
    static boolean isAsked(Party witness) {
        return !witness.address().isEmpty() && witness.key().isUnderstood();
    }

    private long last(Party witness) {
        return QuarkusTransaction.requiringNew()
                .call(() -> kept.last(witness.key().toString()));
    }

    /**
     * Asks those of them that have an address for their signature of the newest head.
     *
     * @throws SealStopped if one has seen leaves that are not here, or another tree
     */
    void ask(List<Party> witnesses) {
        for (Party witness : witnesses) {
            Pause pause = pauses.get(witness.address());
            boolean left = pause != null && clock.instant().isBefore(pause.until());
            if (isAsked(witness) && !left) {
                try {
                    ask(witness, last(witness), true);
                } catch (SealStopped objection) {
                    objects(witness, objection);
                    throw objection;
                }
            }
        }
    }

    /** @param again whether to go on from the size that the witness says it stands at, once */
    private void ask(Party witness, long old, boolean again) {
        Optional<LogRows.Signed> newest =
                QuarkusTransaction.requiringNew().call(rows::newest).filter(signed -> signed.size() > old);
        if (newest.isEmpty()
                || Objects.equals(malformed.get(witness.key()), newest.get().size())) {
            return;
        }
        long size = newest.get().size();
        SignedNote note = SignedNote.parse(newest.get().note());
        Answered answer = send(witness, body(old, size, note));
        keep(witness, size, note, answer);
        if (answer.status() == MALFORMED) {
            LOG.errorf(
                    "the witness %s calls the request for the head of %s leaves malformed, and is not asked for it again: %s",
                    witness.key().name(), size, answer.body().strip());
            malformed.put(witness.key(), size);
        }
        if (answer.status() == NOT_PROVEN) {
            throw new SealStopped("The witness " + witness.key().name()
                    + " says that the head does not go on from the one that it signed: the log was rewritten.");
        }
        if (answer.status() == SIZE_DIFFERS && answer.body().matches("[0-9]{1,18}\n?")) {
            long stands = Long.parseLong(answer.body().strip());
            if (stands > newestSize()) {
                throw new LogIsAhead("The witness " + witness.key().name() + " has seen " + stands
                        + " leaves; here are " + size + ".");
            }
            if (again && stands <= size) {
                ask(witness, stands, false);
            }
        }
        if (answer.status() == SIGNED) {
            objections.remove(witness.key());
        }
    }

    /** Another node may have signed a later head meanwhile, and shown it. */
    private long newestSize() {
        return QuarkusTransaction.requiringNew()
                .call(() -> rows.newest().map(LogRows.Signed::size).orElse(0L));
    }

    private String body(long old, long size, SignedNote note) {
        List<Hash> path = old == 0
                ? List.of()
                : QuarkusTransaction.requiringNew().call(() -> new TreeReader(size, rows).consistency(old));
        return new AddCheckpoint(old, path, note).toString();
    }

    private Answered send(Party witness, String body) {
        try {
            HttpResponse<String> answer = http.send(
                    HttpRequest.newBuilder(URI.create(WitnessedHeads.address(witness) + "/add-checkpoint"))
                            .timeout(PATIENCE)
                            .POST(HttpRequest.BodyPublishers.ofString(body))
                            .build(),
                    HttpResponse.BodyHandlers.ofString());
            return new Answered(answer.statusCode(), answer.body());
        } catch (IOException | IllegalArgumentException e) {
            return new Answered(NO_ANSWER, String.valueOf(e.getMessage()));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return new Answered(NO_ANSWER, "interrupted");
        }
    }

    private void keep(Party witness, long size, SignedNote note, Answered answer) {
        Optional<SignedNote.Line> line =
                answer.status() == SIGNED ? own(witness, note, answer.body()) : Optional.empty();
        Instant now = clock.instant();
        String key = witness.key().toString();
        QuarkusTransaction.requiringNew().run(() -> {
            line.ifPresent(
                    signed -> kept.keep(size, key, Instant.ofEpochSecond(Cosignature.time(signed)), signed.toString()));
            kept.note(
                    now,
                    witness.key().name(),
                    size,
                    answer.status(),
                    line.isPresent()
                            ? ""
                            : answer.status() == SIGNED
                                    ? "no signature by its key that holds"
                                    : answer.body().strip());
        });
        if (line.isPresent()) {
            heads.signed(witness, size);
            pauses.remove(witness.address());
        } else {
            Pause before = pauses.get(witness.address());
            long seconds = before == null ? 1 : Math.min(LONGEST_PAUSE_S, before.seconds() * 2);
            pauses.put(witness.address(), new Pause(now.plusSeconds(seconds), seconds));
        }
    }

    /** The witness's own signature among the lines of its answer, if it holds. */
    private static Optional<SignedNote.Line> own(Party witness, SignedNote note, String body) {
        try {
            SignedNote answered = new SignedNote(
                    note.text(), body.lines().map(SignedNote.Line::parse).toList());
            answered.signers(List.of(witness.key()));
            return answered.by(witness.key()).stream().findFirst();
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }
}
