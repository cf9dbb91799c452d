package org.benchtrail.seal;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.core.integrity.KeyHistory;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.integrity.VerifierKey;
import org.benchtrail.core.integrity.WitnessPolicy.Party;

/** The newest head of this log that a witness keeps, as it serves it itself (C2SP tlog-witness, the monitoring prefix). */
@ApplicationScoped
class WitnessedHeads {
    private static final Duration PATIENCE = Duration.ofSeconds(10);
    private static final int THERE = 200;
    private static final int NOTHING = 404;

    private final Clock clock;
    private final HttpClient http =
            HttpClient.newBuilder().connectTimeout(PATIENCE).build();
    private final Map<String, Looked> looked = new ConcurrentHashMap<>();

    WitnessedHeads(Clock clock) {
        this.clock = clock;
    }

    /**
     * What was last found at a witness.
     *
     * @param words such as "120 leaves"
     */
    record Looked(Instant at, String words) {}

    /** What was last found at the witness of that name, since this server was started. */
    Optional<Looked> looked(String witness) {
        return Optional.ofNullable(looked.get(witness));
    }

    /** It has just signed the head of so many leaves, and keeps it so. */
    void signed(Party witness, long size) {
        looked.put(witness.key().name(), new Looked(clock.instant(), size + " leaves"));
    }

    /** Whether the witness answered when it was last asked, be it that it keeps nothing. */
    record Answer(boolean answered, Optional<SignedNote> head) {
        private static final Answer NONE = new Answer(false, Optional.empty());
        private static final Answer NOTHING_KEPT = new Answer(true, Optional.empty());
    }

    /**
     * Asks a witness. Only what both it and this log have signed is taken from it: whoever is in between can hold an answer back, and
     * make none.
     */
    Answer newest(Party witness, KeyHistory known) {
        String origin = String.valueOf(known.origin());
        try {
            HttpResponse<InputStream> answer = http.send(
                    HttpRequest.newBuilder(URI.create(address(witness) + "/"
                                    + Hash.sha256(origin.getBytes(StandardCharsets.UTF_8))
                                            .hex()
                                    + "/checkpoint"))
                            .timeout(PATIENCE)
                            .build(),
                    HttpResponse.BodyHandlers.ofInputStream());
            try (InputStream body = answer.body()) {
                byte[] bytes = body.readNBytes(SignedNote.LARGEST);
                return answer.statusCode() == THERE
                        ? told(witness, known, SignedNote.parse(bytes))
                        : nothing(witness, answer.statusCode());
            }
        } catch (IOException e) {
            return said(witness, "no answer", Answer.NONE);
        } catch (IllegalArgumentException e) {
            return said(witness, "no head that it has signed: " + e.getMessage(), Answer.NONE);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return Answer.NONE;
        }
    }

    static String address(Party witness) {
        return witness.address().replaceFirst("/$", "");
    }

    private Answer nothing(Party witness, int status) {
        return status == NOTHING
                ? said(witness, "no head of this log", Answer.NOTHING_KEPT)
                : said(witness, "no head: it answers " + status, Answer.NONE);
    }

    private Answer told(Party witness, KeyHistory known, SignedNote note) {
        note.signers(List.of(witness.key()));
        Checkpoint head = Checkpoint.parse(note.text());
        if (!head.origin().equals(known.origin()) || !isOurs(note, known.signing(head.size()))) {
            return said(witness, "a head of this log's name that no key of this log has signed", Answer.NONE);
        }
        return said(witness, head.size() + " leaves", new Answer(true, Optional.of(note)));
    }

    private static boolean isOurs(SignedNote note, List<VerifierKey> keys) {
        try {
            return !note.signers(keys).isEmpty();
        } catch (IllegalArgumentException notSigned) {
            return false;
        }
    }

    private Answer said(Party witness, String words, Answer answer) {
        looked.put(witness.key().name(), new Looked(clock.instant(), words));
        return answer;
    }
}
