package org.benchtrail.core.integrity;

import java.util.ArrayList;
import java.util.List;

/**
 * The growing edge of a tree: the hashes of its full subtrees from the largest to the smallest, one for each 1-bit of its size.
 * A leaf costs one leaf hash and one node hash on average.
 */
public final class Frontier {
    /** Levels of the tree between one level of tiles and the next. */
    static final int TILE_HEIGHT = 8;

    private final List<Hash> subtrees;
    private final Completed completed;
    private long size;

    /** Hears of every full tile: the hash over it is hash {@code n} of {@code level}, which is 1 for tiles of leaves. */
    public interface Completed {
        void node(int level, long n, Hash hash);
    }

    /**
     * The edge of a tree.
     *
     * @param subtrees as {@link #subtrees()} gave them
     * @throws IllegalArgumentException if these are not as many as the size asks for
     */
    public Frontier(long size, List<Hash> subtrees, Completed completed) {
        if (size < 0 || Long.bitCount(size) != subtrees.size()) {
            throw new IllegalArgumentException(
                    "a tree of " + size + " leaves has not " + subtrees.size() + " full subtrees");
        }
        this.size = size;
        this.subtrees = new ArrayList<>(subtrees);
        this.completed = completed;
    }

    /** The edge of a tree without leaves, which nobody listens to. */
    public static Frontier empty() {
        return new Frontier(0, List.of(), (level, n, hash) -> {});
    }

    public void add(Hash leafHash) {
        Hash grown = leafHash;
        int height = 0;
        for (long rest = size; (rest & 1) == 1; rest >>= 1) {
            grown = Hash.ofNode(subtrees.remove(subtrees.size() - 1), grown);
            height++;
            if (height % TILE_HEIGHT == 0) {
                completed.node(height / TILE_HEIGHT, size >> height, grown);
            }
        }
        subtrees.add(grown);
        size++;
    }

    public long size() {
        return size;
    }

    /** From the largest to the smallest. */
    public List<Hash> subtrees() {
        return List.copyOf(subtrees);
    }

    public Hash root() {
        if (size == 0) {
            return Hash.EMPTY_TREE;
        }
        Hash root = subtrees.get(subtrees.size() - 1);
        for (int i = subtrees.size() - 2; i >= 0; i--) {
            root = Hash.ofNode(subtrees.get(i), root);
        }
        return root;
    }
}
