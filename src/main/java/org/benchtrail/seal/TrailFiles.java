package org.benchtrail.seal;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.integrity.HashChain;
import org.benchtrail.core.integrity.ProofFile;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.integrity.TreeReader;
import org.benchtrail.seal.offline.TrailLines;
import org.benchtrail.trail.TrailEntry;

/** The trail of a ticket as a file, each entry with the proof that it is in the log, all of them for one head. */
@ApplicationScoped
@Transactional
public class TrailFiles {
    private final LogRows rows;

    TrailFiles(LogRows rows) {
        this.rows = rows;
    }

    /** By the newest head; empty if nothing was ever signed. */
    public Optional<TrailFile> newest(String ticket, List<TrailEntry> trail) {
        return rows.newest().map(signed -> file(ticket, trail, signed));
    }

    /** By the head of so many leaves, whenever it is asked for; empty if there is no such head. */
    public Optional<TrailFile> at(long leaves, String ticket, List<TrailEntry> trail) {
        return rows.headsFrom(leaves, 1).stream()
                .filter(signed -> signed.size() == leaves)
                .findFirst()
                .map(signed -> file(ticket, trail, signed));
    }

    private TrailFile file(String ticket, List<TrailEntry> trail, LogRows.Signed signed) {
        SignedNote head = rows.note(signed);
        Map<Long, ProofFile> proofs = proofs(ticket, signed.size(), head);
        StringBuilder lines = new StringBuilder();
        List<TrailFile.Sealed> leaves = new ArrayList<>();
        for (TrailEntry entry : trail) {
            // what the reader may not know of is not what was hashed
            boolean whole = HashChain.hash(entry.canonical()).equals(entry.hash());
            ProofFile proof = proofs.get((long) entry.entry());
            lines.append(TrailLines.entry(
                            whole ? new String(entry.canonical(), StandardCharsets.UTF_8) : null, entry.hash(), proof))
                    .append('\n');
            if (proof != null) {
                leaves.add(new TrailFile.Sealed(entry.entry(), proof.index()));
            }
        }
        return new TrailFile(TrailLines.first(ticket, head) + "\n", lines.toString(), trail.size(), leaves);
    }

    private Map<Long, ProofFile> proofs(String ticket, long size, SignedNote head) {
        TreeReader tree = new TreeReader(size, rows);
        Map<Long, ProofFile> proofs = new HashMap<>();
        rows.places("ticket/" + ticket).stream()
                .filter(p -> p.index() < size)
                .forEach(p -> proofs.put(p.place(), new ProofFile(p.index(), tree.inclusion(p.index()), head)));
        return proofs;
    }
}
