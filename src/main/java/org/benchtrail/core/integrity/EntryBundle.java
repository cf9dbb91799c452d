package org.benchtrail.core.integrity;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** The leaves below a tile of level 0: each its length in two bytes, the higher one first, and its bytes (C2SP tlog-tiles). */
public final class EntryBundle {
    private EntryBundle() {}

    public static byte[] write(List<Leaf> leaves) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        for (Leaf leaf : leaves) {
            byte[] bytes = leaf.bytes();
            out.write(bytes.length >> 8);
            out.write(bytes.length & 0xff);
            out.writeBytes(bytes);
        }
        return out.toByteArray();
    }

    /** @throws IllegalArgumentException if a byte is missing or too many, or one of them is no leaf */
    public static List<Leaf> read(byte[] bundle) {
        List<Leaf> leaves = new ArrayList<>();
        int at = 0;
        while (at < bundle.length) {
            if (at + 2 > bundle.length) {
                throw new IllegalArgumentException("half a length at byte " + at);
            }
            int end = at + 2 + ((bundle[at] & 0xff) << 8) + (bundle[at + 1] & 0xff);
            if (end > bundle.length) {
                throw new IllegalArgumentException("the leaf at byte " + at + " is longer than what is there");
            }
            leaves.add(Leaf.parse(Arrays.copyOfRange(bundle, at + 2, end)));
            at = end;
        }
        return leaves;
    }
}
