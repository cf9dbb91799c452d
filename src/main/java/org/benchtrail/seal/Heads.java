package org.benchtrail.seal;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.KeyHistory;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.integrity.VerifierKey;
import org.benchtrail.core.integrity.WitnessPolicy.Party;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;

/** Heads of the log for what has to come after something that is sealed; everything within the running transaction. */
@Startup
@ApplicationScoped
public class Heads {
    private final EntityManager database;
    private final SqlText text;
    private final Witnessing witnessing;
    private final LogRows rows;
    private final LogKeys keys;

    Heads(EntityManager database, Witnessing witnessing, LogRows rows, LogKeys keys) {
        this.database = database;
        this.witnessing = witnessing;
        this.rows = rows;
        this.keys = keys;
        text = SqlText.of(Heads.class).having("sealed", "own", "witnessed", "keys of");
    }

    /**
     * A head.
     *
     * @param size of the log
     * @param note with the log's own signature and that of the witness that was asked for, and no other
     */
    public record Head(long size, String note) {}

    private record Row(long size, String note, String line) {}

    /**
     * The first head that covers a record.
     *
     * @param witness name of the key that has to have signed it as well; empty for none
     * @return empty while there is none
     */
    public Optional<Head> firstAfter(String stream, long place, String witness) {
        List<Long> sealed = Sql.of(database, text.statement("sealed"))
                .with("stream", stream)
                .with("place", place)
                .values(Long.class);
        return sealed.stream()
                .findFirst()
                .flatMap(index -> first(index, witness))
                .map(row -> new Head(row.size(), note(row).toString()));
    }

    private Optional<Row> first(long index, String witness) {
        Sql first = Sql.of(database, text.statement(witness.isEmpty() ? "own" : "witnessed"))
                .with("index", index);
        return (witness.isEmpty() ? first : first.with("witness", witness)).row(Row.class);
    }

    private static SignedNote note(Row row) {
        SignedNote note = SignedNote.parse(row.note());
        String origin = Checkpoint.parse(note.text()).origin();
        Stream<SignedNote.Line> own =
                note.lines().stream().filter(l -> l.name().equals(origin)).limit(1);
        Stream<SignedNote.Line> other =
                row.line().isEmpty() ? Stream.empty() : Stream.of(SignedNote.Line.parse(row.line()));
        return new SignedNote(note.text(), Stream.concat(own, other).toList());
    }

    /** Whether a note is a head of this log, signed by one of its keys. */
    public boolean isOfLog(String note) {
        KeyHistory known = keys.known();
        try {
            Checkpoint checkpoint = Checkpoint.parse(SignedNote.parse(note).text());
            return checkpoint.origin().equals(known.origin()) && isSigned(note, known.signing(checkpoint.size()));
        } catch (IllegalArgumentException e) {
            return false;
        }
    }

    /**
     * Whether a witness signed a note.
     *
     * @param witness name of its key; where the site asks it no more, what it signed before tells which key that is
     */
    public boolean isOfWitness(String note, String witness) {
        List<VerifierKey> asked = parties().stream()
                .map(Party::key)
                .filter(key -> key.name().equals(witness))
                .toList();
        return isSigned(
                note,
                asked.isEmpty()
                        ? Sql.of(database, text.statement("keys of"))
                                .with("witness", witness)
                                .values(String.class)
                                .stream()
                                .map(VerifierKey::parse)
                                .toList()
                        : asked);
    }

    private static boolean isSigned(String note, List<VerifierKey> keys) {
        try {
            return !SignedNote.parse(note).signers(keys).isEmpty();
        } catch (IllegalArgumentException e) {
            return false;
        }
    }

    /** The newest head as a report shows it. */
    @Transactional
    public PaperHead onPaper(ZoneId zone) {
        return rows.newest()
                .map(signed -> PaperHead.of(rows.note(signed), signed.signedAt(), zone))
                .orElse(PaperHead.NONE);
    }

    /** Names of the keys of the witnesses that the site asks; none without a policy. */
    public List<String> witnesses() {
        return parties().stream()
                .filter(party -> party.key().isUnderstood())
                .map(party -> party.key().name())
                .toList();
    }

    private List<Party> parties() {
        try {
            return witnessing.witnesses();
        } catch (IOException e) {
            throw new UncheckedIOException("the policy of witnesses", e);
        }
    }
}
