package org.benchtrail.seal;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.benchtrail.core.integrity.HashChain;
import org.benchtrail.core.integrity.Hole;
import org.benchtrail.core.integrity.ProofFile;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.integrity.TreeReader;
import org.benchtrail.core.method.Origin;
import org.benchtrail.core.method.Policy;
import org.benchtrail.core.method.PolicyFingerprint;
import org.benchtrail.seal.offline.TrailLines;
import org.benchtrail.trail.TrailEntry;
import org.jspecify.annotations.Nullable;

/** The trail of a ticket as a file, each entry with the proof that it is in the log, all of them for one head. */
@ApplicationScoped
@Transactional
public class TrailFiles {
    private final LogRows rows;
    private final Policies policies;

    TrailFiles(LogRows rows, Policies policies) {
        this.rows = rows;
        this.policies = policies;
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
        TreeReader tree = new TreeReader(signed.size(), rows);
        Map<Long, ProofFile> proofs = proofs("ticket/" + ticket, signed.size(), tree, head);
        Map<Integer, Lost> lost = lost("ticket/" + ticket, signed.size(), tree, head);
        StringBuilder lines = new StringBuilder();
        List<TrailFile.Sealed> leaves = new ArrayList<>();
        for (TrailEntry entry : trail) {
            // what the reader may not know of is not what was hashed
            boolean whole = HashChain.hash(entry.canonical()).equals(entry.hash());
            ProofFile proof = proofs.get((long) entry.entry());
            boolean last = entry == trail.get(trail.size() - 1);
            lines.append(TrailLines.entry(
                            whole ? new String(entry.canonical(), StandardCharsets.UTF_8) : null,
                            whole ? entry.wordsAsJson().orElse(null) : null,
                            entry.hash(),
                            proof))
                    .append('\n');
            if (proof != null) {
                leaves.add(new TrailFile.Sealed(entry.entry(), proof.index()));
            }
            Lost after = lost.get(entry.entry() + 1);
            if (after != null && (!last || after.proof() != null)) {
                lines.append(TrailLines.hole(new String(after.record(), StandardCharsets.UTF_8), after.proof()))
                        .append('\n');
            }
        }
        return new TrailFile(
                TrailLines.first(ticket, head, decidedBy(trail)) + "\n", lines.toString(), trail.size(), leaves);
    }

    /** The policies that the entries name, as far as their values are known. */
    private SortedMap<String, String> decidedBy(List<TrailEntry> trail) {
        Map<String, Optional<Policy>> known = policies.all();
        SortedMap<String, String> decided = new TreeMap<>();
        trail.stream()
                .flatMap(entry -> entry.readable().stream())
                .flatMap(entry -> Stream.ofNullable(entry.stamp().origin()))
                .map(Origin::policy)
                .distinct()
                .forEach(name -> known.getOrDefault(name, Optional.empty())
                        .ifPresent(policy -> decided.put(name, PolicyFingerprint.lines(policy))));
        return decided;
    }

    private Map<Long, ProofFile> proofs(String stream, long size, TreeReader tree, SignedNote head) {
        Map<Long, ProofFile> proofs = new HashMap<>();
        rows.places(stream).stream()
                .filter(p -> p.index() < size)
                .forEach(p -> proofs.put(p.place(), new ProofFile(p.index(), tree.inclusion(p.index()), head)));
        return proofs;
    }

    /**
     * Entries after which the ticket goes on although they are lost.
     *
     * @param record of those who agreed, the bytes that were hashed
     * @param proof null if the head does not cover it; one at the end of a file is told only if it does, so that the same head
     *     gives the same file
     */
    private record Lost(byte[] record, @Nullable ProofFile proof) {}

    /** By the first entry that is lost. */
    private Map<Integer, Lost> lost(String stream, long size, TreeReader tree, SignedNote head) {
        List<Hole> holes = rows.holes().getOrDefault(stream, List.of());
        Map<Long, ProofFile> proofs = holes.isEmpty() ? Map.of() : proofs(Incidents.STREAM, size, tree, head);
        Map<Integer, Lost> lost = new HashMap<>();
        for (Hole hole : holes) {
            byte[] record = rows.records(Incidents.STREAM, hole.incident() - 1, 1)
                    .get(0)
                    .canonical();
            lost.put(hole.first(), new Lost(record, proofs.get(hole.incident())));
        }
        return lost;
    }
}
