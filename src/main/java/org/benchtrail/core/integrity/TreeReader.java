package org.benchtrail.core.integrity;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** A tree of one size, read from its tiles: its root, and proofs about it. */
public final class TreeReader {
    private final long size;
    private final Tiles tiles;
    private final Map<TilePath, byte[]> read = new HashMap<>();

    /** Where tiles are kept. */
    public interface Tiles {
        /** The hashes of a tile of {@code path.width()} hashes, one after the other. */
        byte[] read(TilePath path);
    }

    public TreeReader(long size, Tiles tiles) {
        if (size < 0) {
            throw new IllegalArgumentException("a tree has no " + size + " leaves");
        }
        this.size = size;
        this.tiles = tiles;
    }

    public Hash root() {
        return size == 0 ? Hash.EMPTY_TREE : over(0, size);
    }

    /** Proof that the leaf at {@code index} is there: 0 &lt;= index &lt; size. */
    public List<Hash> inclusion(long index) {
        if (index < 0 || index >= size) {
            throw new IllegalArgumentException("leaf " + index + " of " + size);
        }
        List<Hash> path = new ArrayList<>();
        include(index, 0, size, path);
        return path;
    }

    /** Proof that the tree begins with all leaves of a smaller one: 1 &lt;= from &lt;= size. */
    public List<Hash> consistency(long from) {
        if (from < 1 || from > size) {
            throw new IllegalArgumentException("from " + from + " to " + size);
        }
        List<Hash> path = new ArrayList<>();
        extend(from, 0, size, true, path);
        return path;
    }

    private void include(long index, long start, long end, List<Hash> path) {
        if (end - start == 1) {
            return;
        }
        long middle = start + split(end - start);
        if (index < middle) {
            include(index, start, middle, path);
            path.add(over(middle, end));
        } else {
            include(index, middle, end, path);
            path.add(over(start, middle));
        }
    }

    private void extend(long from, long start, long end, boolean known, List<Hash> path) {
        if (from == end) {
            if (!known) {
                path.add(over(start, end));
            }
            return;
        }
        long middle = start + split(end - start);
        if (from <= middle) {
            extend(from, start, middle, known, path);
            path.add(over(middle, end));
        } else {
            extend(from, middle, end, false, path);
            path.add(over(start, middle));
        }
    }

    /** The largest power of two below {@code n}, which is at least 2. */
    private static long split(long n) {
        return Long.highestOneBit(n - 1);
    }

    /** Hash over the leaves from {@code start} to before {@code end}. */
    private Hash over(long start, long end) {
        long leaves = end - start;
        if (Long.bitCount(leaves) == 1) {
            return full(start, Long.numberOfTrailingZeros(leaves));
        }
        long middle = start + split(leaves);
        return Hash.ofNode(over(start, middle), over(middle, end));
    }

    /** Hash over {@code 2^height} leaves from {@code start}, which is a multiple of that. */
    private Hash full(long start, int height) {
        int level = height / Frontier.TILE_HEIGHT;
        long first = start >> (level * Frontier.TILE_HEIGHT);
        TilePath path = TilePath.of(level, first / TilePath.FULL, size);
        byte[] tile = read.computeIfAbsent(path, tiles::read);
        if (tile.length != path.width() * Hash.BYTES) {
            throw new IllegalArgumentException(path + " has " + tile.length + " bytes");
        }
        return fold(tile, (int) (first % TilePath.FULL), 1 << (height % Frontier.TILE_HEIGHT));
    }

    private static Hash fold(byte[] tile, int first, int count) {
        if (count == 1) {
            return Hash.of(Arrays.copyOfRange(tile, first * Hash.BYTES, (first + 1) * Hash.BYTES));
        }
        int half = count / 2;
        return Hash.ofNode(fold(tile, first, half), fold(tile, first + half, half));
    }
}
