package org.benchtrail.core.integrity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.benchtrail.core.Published;
import org.junit.jupiter.api.Test;

/** Every proof that is published to be accepted or refused, as {@code published-proofs.tsv} lists them. */
class PublishedProofsTest {
    private static final String SOURCE = "github.com/transparency-dev/merkle, testdata, Apache License 2.0";

    /**
     * 'Good' there: an empty proof between two trees of one leaf. Its two roots are the same twelve letters, though, and no hash;
     * here a root has 32 bytes, so it is refused and meant to be.
     */
    private static final String DUMMY_ROOTS = "additional/sizes-are-equal-one-and-proof-is-empty";

    private final Map<String, String> hashes = new HashMap<>();

    private Hash hash(String name) {
        return Hash.ofBase64(Objects.requireNonNull(hashes.get(name), name));
    }

    private List<String> rows() throws IOException {
        try (InputStream file = PublishedProofsTest.class.getResourceAsStream("published-proofs.tsv")) {
            List<String> rows = new String(Objects.requireNonNull(file).readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(row -> !row.startsWith("#"))
                    .toList();
            rows.stream()
                    .map(row -> row.split("\t", -1))
                    .filter(row -> row[0].equals("hash"))
                    .forEach(row -> hashes.put(row[1], row[2]));
            return rows;
        }
    }

    private boolean holds(String[] row) {
        long first = Long.parseUnsignedLong(row[3]);
        long second = Long.parseUnsignedLong(row[4]);
        try {
            List<Hash> path = row[7].isEmpty()
                    ? List.of()
                    : Stream.of(row[7].split(",")).map(this::hash).toList();
            return row[0].equals("inclusion")
                    ? MerkleProofs.includes(first, second, hash(row[6]), path, hash(row[5]))
                    : MerkleProofs.extendsTree(first, hash(row[5]), second, hash(row[6]), path);
        } catch (IllegalArgumentException notOf32Bytes) {
            return false;
        }
    }

    @Test
    void everyGoodOneHolds_andEveryBadOneIsRefused() throws IOException {
        Map<String, Integer> counts = new HashMap<>();
        for (String line : rows()) {
            String[] row = line.split("\t", -1);
            if (!row[0].equals("hash")) {
                counts.merge(row[0] + " " + row[2], 1, Integer::sum);
                boolean expected = row[2].equals("good") && !row[1].equals(DUMMY_ROOTS);
                Published.check(SOURCE, row[1] + " " + expected, row[1] + " " + holds(row));
            }
        }
        assertEquals(
                Map.of("inclusion good", 6, "inclusion bad", 92, "consistency good", 6, "consistency bad", 92), counts);
    }
}
