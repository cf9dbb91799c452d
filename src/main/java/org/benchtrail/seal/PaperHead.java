package org.benchtrail.seal;

import io.quarkus.qute.RawString;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.Cosignature;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.platform.Moments;
import org.benchtrail.platform.paper.SquareCode;
import org.benchtrail.ticket.SealedUpTo;

/**
 * The head of the log as every report shows it: whoever keeps the paper can hold any later log against it.
 *
 * @param size of the log in leaves; 0 while nothing is sealed, and then nothing else is there but who has seen it
 * @param root in 44 characters, as it is typed for the verifier
 * @param keys ids of the keys by which the log itself signed
 * @param witnesses who else signed, each with the time
 * @param vouched who has seen the head, in a sentence
 * @param code the checkpoint with its signatures as a square code
 * @param codeSays what the code holds
 */
public record PaperHead(
        String origin,
        long size,
        String root,
        String signed,
        String keys,
        List<String> witnesses,
        String vouched,
        RawString code,
        String codeSays) {
    /** What is said of a head that no witness has signed. */
    static final String ALONE = SealedUpTo.ALONE;

    /** Longer ones make modules that a telephone does not tell apart on paper. */
    private static final int LONGEST_CODE = 1000;

    /** Before anything is sealed. */
    static final PaperHead NONE = new PaperHead(
            "",
            0,
            "",
            "",
            "",
            List.of(),
            "Nothing is sealed yet: there is no head of the log that this could name, and nobody else has seen any of it.",
            new RawString(""),
            "");

    static PaperHead of(SignedNote note, Instant signed, ZoneId zone) {
        Checkpoint head = Checkpoint.parse(note.text());
        List<SignedNote.Line> own = lines(note, head, true);
        List<SignedNote.Line> others = lines(note, head, false);
        boolean whole = note.bytes().length <= LONGEST_CODE;
        SignedNote inCode = whole ? note : new SignedNote(note.text(), own);
        return new PaperHead(
                head.origin(),
                head.size(),
                head.root().base64(),
                Moments.text(signed, zone),
                own.stream().map(SignedNote.Line::keyId).collect(Collectors.joining(", ")),
                others.stream()
                        .map(l -> l.name() + ", " + Moments.text(Instant.ofEpochSecond(Cosignature.time(l)), zone))
                        .toList(),
                vouched(note),
                SquareCode.dense(inCode.toString(), "QR code with the checkpoint"),
                whole
                        ? "The checkpoint as it was signed, with all its signatures."
                        : "The checkpoint with the log's own signature; those of witnesses are too long for it.");
    }

    /** Who has seen a head, in a sentence. */
    static String vouched(SignedNote note) {
        List<SignedNote.Line> others = lines(note, Checkpoint.parse(note.text()), false);
        return others.isEmpty()
                ? ALONE
                : "Seen and signed by "
                        + others.stream().map(SignedNote.Line::name).collect(Collectors.joining(", "))
                        + ", and signed by this server.";
    }

    private static List<SignedNote.Line> lines(SignedNote note, Checkpoint head, boolean own) {
        Stream<SignedNote.Line> lines = note.lines().stream();
        return lines.filter(l -> l.name().equals(head.origin()) == own).toList();
    }

    public boolean isThere() {
        return size > 0;
    }
}
