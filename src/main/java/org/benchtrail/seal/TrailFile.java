package org.benchtrail.seal;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;

/**
 * The trail of one ticket as a file.
 *
 * @param first its first line, with the head: it grows when a witness signs later
 * @param lines one for each entry: always the same bytes for the same entries and the same head
 * @param entries how many there are
 * @param leaves those that the head covers, in their order
 */
public record TrailFile(String first, String lines, int entries, List<Sealed> leaves) {
    public TrailFile {
        leaves = List.copyOf(leaves);
    }

    /** An entry and its leaf. */
    public record Sealed(long entry, long leaf) {}

    public String text() {
        return first + lines;
    }

    /** SHA-256 of all lines but the first, in hexadecimal digits. */
    public String sha256() {
        try {
            return HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(lines.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    /** Which entries are which leaves: entries 1 to 5 are leaves 10 to 14, entry 6 is leaf 20. */
    public String leavesInWords() {
        List<String> words = new ArrayList<>();
        for (int from = 0, next; from < leaves.size(); from = next) {
            next = from + 1;
            while (next < leaves.size() && follows(leaves.get(next - 1), leaves.get(next))) {
                next++;
            }
            Sealed a = leaves.get(from);
            Sealed z = leaves.get(next - 1);
            words.add(
                    next - from == 1
                            ? "entry " + a.entry() + " is leaf " + a.leaf()
                            : "entries " + a.entry() + " to " + z.entry() + " are leaves " + a.leaf() + " to "
                                    + z.leaf());
        }
        return words.isEmpty() ? "no entry of it is sealed by this head" : String.join(", ", words);
    }

    private static boolean follows(Sealed before, Sealed after) {
        return after.entry() == before.entry() + 1 && after.leaf() == before.leaf() + 1;
    }

    /** What the head does not cover. */
    public int unsealed() {
        return entries - leaves.size();
    }
}
