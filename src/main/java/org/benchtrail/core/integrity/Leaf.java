package org.benchtrail.core.integrity;

import java.nio.charset.StandardCharsets;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One line of the log: which place of which stream it seals, and the hash of what stands there. No content, no person, no time.
 *
 * @param stream such as {@code ticket/40718-6} or {@code accounts}
 * @param place 1 for the first of its stream, one more for each further one
 * @param hash of what is sealed
 */
public record Leaf(String stream, long place, Hash hash) {
    /** The longest leaf in bytes. */
    public static final int LONGEST = 150;

    private static final Pattern STREAM = Pattern.compile("[a-z]{1,16}(/[0-9A-Za-z-]{1,40})?");
    private static final Pattern LINE =
            Pattern.compile("leaf/1 (" + STREAM.pattern() + ") ([1-9][0-9]{0,18}) ([0-9a-f]{64})\n");

    /** @throws IllegalArgumentException if the stream is not named as streams are, or the place is below 1 */
    public Leaf {
        if (!STREAM.matcher(stream).matches()) {
            throw new IllegalArgumentException("no stream is named '" + stream + "'");
        }
        if (place < 1) {
            throw new IllegalArgumentException("places begin at 1, not at " + place);
        }
    }

    /** @throws IllegalArgumentException if the bytes are no leaf, to the last one */
    public static Leaf parse(byte[] bytes) {
        Matcher line = LINE.matcher(new String(bytes, StandardCharsets.ISO_8859_1));
        if (!line.matches()) {
            throw new IllegalArgumentException("not a leaf");
        }
        return new Leaf(line.group(1), Long.parseLong(line.group(3)), Hash.ofHex(line.group(4)));
    }

    /** The line with its newline, in ASCII. */
    public byte[] bytes() {
        return ("leaf/1 " + stream + " " + place + " " + hash.hex() + "\n").getBytes(StandardCharsets.US_ASCII);
    }

    public Hash leafHash() {
        return Hash.ofLeaf(bytes());
    }
}
