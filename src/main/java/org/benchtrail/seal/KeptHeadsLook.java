package org.benchtrail.seal;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.KeyHistory;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.integrity.WitnessPolicy.Party;
import org.benchtrail.seal.VerificationRows.Finding;

/** The part of a look that is about heads kept outside the database: the note beside the key, and what each witness keeps. */
@ApplicationScoped
class KeptHeadsLook {
    private static final String KEPT = "kept head";
    private static final String NOTE = "the note beside the key";

    private final LogRows rows;
    private final LogKeys keys;
    private final Signing signing;
    private final WitnessedHeads heads;
    private final SealConfig config;

    KeptHeadsLook(LogRows rows, LogKeys keys, Signing signing, WitnessedHeads heads, SealConfig config) {
        this.rows = rows;
        this.keys = keys;
        this.signing = signing;
        this.heads = heads;
        this.config = config;
    }

    List<Finding> look(List<Party> witnesses) {
        List<Finding> found = new ArrayList<>();
        if (config.keyFile().isPresent()) {
            note().ifPresent(found::add);
        }
        KeyHistory known = known();
        for (Party witness : witnesses) {
            if (Witnessing.isAsked(witness) && known.origin() != null) {
                String by = "the head that the witness " + witness.key().name() + " keeps";
                heads.newest(witness, known)
                        .head()
                        .flatMap(note -> unlike(by, Checkpoint.parse(note.text())))
                        .ifPresent(found::add);
            }
        }
        return found;
    }

    /** Where they cannot be read the look says so at another place. */
    private KeyHistory known() {
        try {
            return QuarkusTransaction.requiringNew().call(keys::known);
        } catch (IllegalStateException unreadable) {
            return KeyHistory.of(List.of());
        }
    }

    private Optional<Finding> note() {
        boolean signed =
                QuarkusTransaction.requiringNew().call(() -> rows.newest().isPresent());
        if (Files.notExists(signing.lastNote())) {
            return signed
                    ? Optional.of(new Finding(KEPT, NOTE, "It is gone, although the log has heads."))
                    : Optional.empty();
        }
        try {
            return unlike(
                    NOTE,
                    Checkpoint.parse(SignedNote.parse(Files.readAllBytes(signing.lastNote()))
                            .text()));
        } catch (IOException | IllegalArgumentException e) {
            return Optional.of(new Finding(KEPT, NOTE, "It cannot be read."));
        }
    }

    private Optional<Finding> unlike(String by, Checkpoint head) {
        try {
            QuarkusTransaction.requiringNew().run(() -> signing.requireGoingOn(by, head, rows.size()));
            return Optional.empty();
        } catch (SealStopped e) {
            return Optional.of(new Finding(KEPT, by, e.sentence()));
        }
    }
}
