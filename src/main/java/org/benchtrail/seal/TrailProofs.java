package org.benchtrail.seal;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.Hole;
import org.benchtrail.core.integrity.ProofFile;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.integrity.TreeReader;
import org.jspecify.annotations.Nullable;

/** Proofs that the entries of a ticket are in the log, all of them for its newest head. */
@ApplicationScoped
@Transactional
public class TrailProofs {
    private final LogRows rows;

    TrailProofs(LogRows rows) {
        this.rows = rows;
    }

    /**
     * @param head the newest, with all that witnesses signed
     * @param byEntry those that it covers, by the entry's number
     * @param holes what is lost of it
     */
    public record Proven(SignedNote head, Map<Long, ProofFile> byEntry, List<LostPart> holes) {}

    /**
     * Entries after which the ticket goes on although they are lost.
     *
     * @param record of those who agreed, the bytes that were hashed
     * @param proof null if the head does not cover it
     */
    public record LostPart(
            Hole hole, byte[] record, @Nullable ProofFile proof) {}

    /** Of all entries of a ticket that are sealed; empty if nothing was ever signed. */
    public Optional<Proven> of(String ticket) {
        return rows.newestNote().map(note -> {
            long size = Checkpoint.parse(note.text()).size();
            TreeReader tree = new TreeReader(size, rows);
            Map<Long, ProofFile> proofs = new HashMap<>();
            rows.places("ticket/" + ticket).stream()
                    .filter(p -> p.index() < size)
                    .forEach(p -> proofs.put(p.place(), new ProofFile(p.index(), tree.inclusion(p.index()), note)));
            return new Proven(note, proofs, holes(ticket, note, tree));
        });
    }

    private List<LostPart> holes(String ticket, SignedNote note, TreeReader tree) {
        long size = Checkpoint.parse(note.text()).size();
        return rows.holes().getOrDefault("ticket/" + ticket, List.of()).stream()
                .map(hole -> new LostPart(
                        hole,
                        rows.records(Incidents.STREAM, hole.incident() - 1, 1)
                                .get(0)
                                .canonical(),
                        rows.places(Incidents.STREAM).stream()
                                .filter(p -> p.place() == hole.incident() && p.index() < size)
                                .findFirst()
                                .map(p -> new ProofFile(p.index(), tree.inclusion(p.index()), note))
                                .orElse(null)))
                .toList();
    }
}
