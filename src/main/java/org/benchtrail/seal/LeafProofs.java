package org.benchtrail.seal;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import org.benchtrail.core.integrity.Checkpoint;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.core.integrity.SignedNote;
import org.benchtrail.core.integrity.TreeReader;

/** Proofs that leaves are in the log of one head; everything within the running transaction. */
@ApplicationScoped
public class LeafProofs {
    private final LogRows rows;

    LeafProofs(LogRows rows) {
        this.rows = rows;
    }

    /** Keeps the tiles that it has read: for a stretch of leaves, not for a whole log. */
    public static final class Of {
        private final long size;
        private final TreeReader tree;

        private Of(long size, TreeReader tree) {
            this.size = size;
            this.tree = tree;
        }

        /** Hashes in base64, from the leaf upwards; none where the head does not cover it. */
        public List<String> path(long leaf) {
            return leaf >= size
                    ? List.of()
                    : tree.inclusion(leaf).stream().map(Hash::base64).toList();
        }
    }

    /** @param head a signed note */
    public Of of(String head) {
        long size = Checkpoint.parse(SignedNote.parse(head).text()).size();
        return new Of(size, new TreeReader(size, rows));
    }
}
