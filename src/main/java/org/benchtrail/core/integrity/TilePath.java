package org.benchtrail.core.integrity;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Name of a tile of the tree, or of the leaves below a tile of level 0 (C2SP tlog-tiles).
 *
 * @param level 0 to 7 of the tree: level 8 would begin above 2^63 leaves; {@link #ENTRIES} for leaves
 * @param n number of the tile in its level, from 0
 * @param width how many hashes or leaves it has, 1 to 256
 */
public record TilePath(int level, long n, int width) {
    /** Level of the leaves themselves. */
    public static final int ENTRIES = -1;

    /** How many hashes or leaves a full tile has. */
    public static final int FULL = 256;

    private static final int HIGHEST = 7;
    private static final Pattern PATH =
            Pattern.compile("tile/(entries|[0-7])/((?:x[0-9]{3}/){0,6}[0-9]{3})(?:\\.p/([1-9][0-9]{0,2}))?");

    public TilePath {
        if (level < ENTRIES || level > HIGHEST || n < 0 || width < 1 || width > FULL) {
            throw new IllegalArgumentException("no tile " + level + ", " + n + ", " + width);
        }
    }

    /** Tile {@code n} of a level as it is in a tree of {@code size} leaves. */
    public static TilePath of(int level, long n, long size) {
        return new TilePath(level, n, (int) Math.min(FULL, hashes(level, size) - n * FULL));
    }

    /** How many hashes that level has in a tree of {@code size} leaves. */
    public static long hashes(int level, long size) {
        return size >> (Math.max(0, level) * Frontier.TILE_HEIGHT);
    }

    /** Whether a tree of {@code size} leaves has all that this names. */
    public boolean isWithin(long size) {
        return n <= (hashes(level, size) - width) / FULL && n * FULL + width <= hashes(level, size);
    }

    /** What is named by a path without leading slash; empty if it is not written in the one way in which a tile is named. */
    public static Optional<TilePath> parse(String path) {
        Matcher parts = PATH.matcher(path);
        if (!parts.matches()) {
            return Optional.empty();
        }
        String digits = parts.group(2).replaceAll("[x/]", "");
        @Nullable String width = parts.group(3);
        int level = parts.group(1).equals("entries") ? ENTRIES : Integer.parseInt(parts.group(1));
        int wide = width == null ? FULL : Integer.parseInt(width);
        if (digits.length() > 18 || wide > FULL) {
            return Optional.empty();
        }
        TilePath read = new TilePath(level, Long.parseLong(digits), wide);
        return Optional.of(read).filter(tile -> tile.toString().equals(path));
    }

    /** The path, such as {@code tile/0/x001/x234/067.p/112}. */
    @Override
    public String toString() {
        StringBuilder number = new StringBuilder(String.format("%03d", n % 1000));
        for (long rest = n / 1000; rest > 0; rest /= 1000) {
            number.insert(0, String.format("x%03d/", rest % 1000));
        }
        return "tile/" + (level == ENTRIES ? "entries" : level) + "/" + number + (width == FULL ? "" : ".p/" + width);
    }
}
