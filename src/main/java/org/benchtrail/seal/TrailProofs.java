package org.benchtrail.seal;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.ProofFile;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.integrity.TreeReader;

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
     */
    public record Proven(SignedNote head, Map<Long, ProofFile> byEntry) {}

    /** Of all entries of a ticket that are sealed; empty if nothing was ever signed. */
    public Optional<Proven> of(String ticket) {
        return rows.newestNote().map(note -> {
            long size = Checkpoint.parse(note.text()).size();
            TreeReader tree = new TreeReader(size, rows);
            Map<Long, ProofFile> proofs = new HashMap<>();
            rows.places("ticket/" + ticket).stream()
                    .filter(p -> p.index() < size)
                    .forEach(p -> proofs.put(p.place(), new ProofFile(p.index(), tree.inclusion(p.index()), note)));
            return new Proven(note, proofs);
        });
    }
}
