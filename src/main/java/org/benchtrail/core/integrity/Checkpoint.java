package org.benchtrail.core.integrity;

import java.util.List;
import java.util.regex.Pattern;

/**
 * What a log says of itself at one size (C2SP tlog-checkpoint).
 *
 * @param origin which log, for ever
 * @param size number of leaves
 */
public record Checkpoint(String origin, long size, Hash root) {
    private static final Pattern SIZE = Pattern.compile("0|[1-9][0-9]{0,18}");

    /** @throws IllegalArgumentException if the origin is empty or has a line break, or the size is negative */
    public Checkpoint {
        if (origin.isEmpty() || origin.contains("\n") || size < 0) {
            throw new IllegalArgumentException("not a checkpoint: '" + origin + "', " + size);
        }
    }

    /**
     * Reads the text of a note. Lines beyond the third are allowed.
     *
     * @throws IllegalArgumentException if it is no checkpoint
     */
    public static Checkpoint parse(String text) {
        List<String> lines = text.lines().toList();
        if (lines.size() < 3
                || !text.endsWith("\n")
                || !SIZE.matcher(lines.get(1)).matches()) {
            throw new IllegalArgumentException("not a checkpoint: it has to begin with origin, size and root");
        }
        return new Checkpoint(lines.get(0), Long.parseLong(lines.get(1)), Hash.ofBase64(lines.get(2)));
    }

    /** The text that is signed. */
    public String text() {
        return origin + "\n" + size + "\n" + root.base64() + "\n";
    }
}
