package org.benchtrail.seal;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.EntryBundle;
import org.benchtrail.core.integrity.Frontier;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.core.integrity.Leaf;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.integrity.TilePath;

/**
 * Puts back the leaves that an old backup lacks, from the folder that the log is written to, so that the same log goes on. What they
 * seal stays lost: each such leaf is marked, and an incident says how many there are.
 */
@ApplicationScoped
class LeafRestore {
    private final LogRows rows;
    private final LogKeys keys;
    private final Signing signing;
    private final Incidents incidents;
    private final SealConfig config;
    private final Clock clock;

    LeafRestore(LogRows rows, LogKeys keys, Signing signing, Incidents incidents, SealConfig config, Clock clock) {
        this.rows = rows;
        this.keys = keys;
        this.signing = signing;
        this.incidents = incidents;
        this.config = config;
        this.clock = clock;
    }

    /** Why no leaf is put back, a sentence. */
    static final class Refused extends Exception {
        private static final long serialVersionUID = 1;

        Refused(String sentence) {
            super(sentence);
        }
    }

    /**
     * What was done.
     *
     * @param leaves how many were put back
     * @param lost of how many of them the record is lost
     */
    record Restored(long leaves, int lost) {}

    /** @throws Refused if the folder's log is not this one, or ends before the last head that was signed */
    Restored from(Path folder) throws IOException, Refused {
        Checkpoint end = signed(folder.resolve(LogFolder.CHECKPOINT));
        Path last = config.keyFile().isPresent() ? signing.lastNote() : folder.resolve(LogFolder.CHECKPOINT);
        Checkpoint before = Files.exists(last) ? signed(last) : end;
        if (end.size() < before.size()) {
            throw new Refused("The folder holds " + end.size() + " leaves, and " + before.size()
                    + " were signed: take a folder that was written later.");
        }
        List<Leaf> leaves = read(folder, end.size());
        requireRoot(leaves, before);
        requireRoot(leaves, end);
        return putBack(leaves);
    }

    private Checkpoint signed(Path file) throws IOException, Refused {
        try {
            SignedNote note = SignedNote.parse(Files.readAllBytes(file));
            Checkpoint checkpoint = Checkpoint.parse(note.text());
            note.signers(QuarkusTransaction.requiringNew().call(keys::known).signing(checkpoint.size()));
            return checkpoint;
        } catch (IllegalArgumentException e) {
            throw new Refused(file + " is not signed by a key of this log.");
        }
    }

    private static List<Leaf> read(Path folder, long size) throws IOException, Refused {
        List<Leaf> leaves = new ArrayList<>();
        while (leaves.size() < size) {
            TilePath tile = TilePath.of(TilePath.ENTRIES, leaves.size() / TilePath.FULL, size);
            try {
                leaves.addAll(EntryBundle.read(Files.readAllBytes(folder.resolve(tile.toString()))));
            } catch (IllegalArgumentException e) {
                throw new Refused(tile + " in the folder holds something else than leaves.");
            }
            if (leaves.size() != tile.n() * TilePath.FULL + tile.width()) {
                throw new Refused(tile + " in the folder has not as many leaves as its name says.");
            }
        }
        return leaves;
    }

    private static void requireRoot(List<Leaf> leaves, Checkpoint head) throws Refused {
        Frontier frontier = Frontier.empty();
        leaves.subList(0, (int) head.size()).forEach(leaf -> frontier.add(leaf.leafHash()));
        if (!frontier.root().equals(head.root())) {
            throw new Refused("The leaves of the folder are not those of the head of " + head.size() + ".");
        }
    }

    private Restored putBack(List<Leaf> all) throws Refused {
        QuarkusTransaction.begin();
        boolean done = false;
        try {
            if (!rows.lock()) {
                throw new Refused("A server is sealing just now: stop it first.");
            }
            List<LogRows.Node> nodes = new ArrayList<>();
            Frontier frontier = rows.frontier((level, n, hash) -> nodes.add(new LogRows.Node(level, n, hash)));
            List<Leaf> missing = missing((int) frontier.size(), all);
            Restored restored = add(missing, frontier, nodes);
            done = true;
            return restored;
        } finally {
            if (done) {
                QuarkusTransaction.commit();
            } else {
                QuarkusTransaction.rollback();
            }
        }
    }

    private List<Leaf> missing(int here, List<Leaf> all) throws Refused {
        if (here >= all.size()) {
            throw new Refused("There is nothing to put back: the folder holds " + all.size() + " leaves, the database "
                    + here + ".");
        }
        if (!rows.leaves(0, here).equals(all.subList(0, here))) {
            throw new Refused("The leaves that are here are not those of the folder: something was sealed since the"
                    + " backup was restored, or it is of another log.");
        }
        return all.subList(here, all.size());
    }

    private Restored add(List<Leaf> missing, Frontier frontier, List<LogRows.Node> nodes) {
        long from = frontier.size();
        for (int at = 0; at < missing.size(); at += Sealing.BATCH) {
            List<Leaf> some = missing.subList(at, Math.min(missing.size(), at + Sealing.BATCH));
            List<Hash> hashes = some.stream().map(Leaf::leafHash).toList();
            hashes.forEach(frontier::add);
            rows.add(from + at, some, hashes);
        }
        if (!nodes.isEmpty()) {
            rows.add(nodes);
        }
        rows.grow(frontier);
        int lost = rows.putBack(from);
        rows.behind(null);
        incidents.found(
                "leaves-restored",
                "log",
                "An old backup was restored. " + missing.size() + " leaves from " + from
                        + " on were put back; the records of " + lost + " of them are lost.",
                clock.instant());
        return new Restored(missing.size(), lost);
    }
}
