package org.benchtrail.core.integrity;

import java.util.ArrayList;
import java.util.List;

/** Whether a proof holds: RFC 9162 sections 2.1.3.2 and 2.1.4.2. Sizes and indexes are whole numbers from 0 to 2^63 - 1. */
public final class MerkleProofs {
    private MerkleProofs() {}

    /** Whether {@code path} proves that a leaf of that hash stands at {@code index} of a tree of that size and root. */
    public static boolean includes(long index, long size, Hash leafHash, List<Hash> path, Hash root) {
        if (index < 0 || index >= size) {
            return false;
        }
        Climb climb = new Climb(index, size - 1);
        Hash grown = leafHash;
        for (Hash other : path) {
            if (climb.last == 0) {
                return false;
            }
            grown = climb.isFromLeft() ? Hash.ofNode(other, grown) : Hash.ofNode(grown, other);
            climb.up();
        }
        return climb.last == 0 && grown.equals(root);
    }

    /**
     * Whether {@code path} proves that the tree of size {@code to} begins with all leaves of the tree of size {@code from}. A tree
     * without leaves proves nothing: {@code from} is at least 1.
     */
    public static boolean extendsTree(long from, Hash fromRoot, long to, Hash toRoot, List<Hash> path) {
        if (from < 1 || from > to) {
            return false;
        }
        if (from == to) {
            return path.isEmpty() && fromRoot.equals(toRoot);
        }
        if (path.isEmpty()) {
            return false;
        }
        List<Hash> whole = new ArrayList<>(path);
        if (Long.bitCount(from) == 1) {
            whole.add(0, fromRoot);
        }
        Climb climb = new Climb(from - 1, to - 1);
        while ((climb.at & 1) == 1) {
            climb.step();
        }
        Hash small = whole.get(0);
        Hash large = small;
        for (Hash other : whole.subList(1, whole.size())) {
            if (climb.last == 0) {
                return false;
            }
            if (climb.isFromLeft()) {
                small = Hash.ofNode(other, small);
                large = Hash.ofNode(other, large);
            } else {
                large = Hash.ofNode(large, other);
            }
            climb.up();
        }
        return climb.last == 0 && small.equals(fromRoot) && large.equals(toRoot);
    }

    /** A node on its way to the root: its number in its row, and the number of the last one there. */
    private static final class Climb {
        private long at;
        private long last;

        Climb(long at, long last) {
            this.at = at;
            this.last = last;
        }

        /** Whether the next hash of the path stands left of this node. */
        boolean isFromLeft() {
            return (at & 1) == 1 || at == last;
        }

        void up() {
            if (isFromLeft()) {
                while ((at & 1) == 0 && at != 0) {
                    step();
                }
            }
            step();
        }

        void step() {
            at >>= 1;
            last >>= 1;
        }
    }
}
