package org.benchtrail.seal.offline;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.SortedMap;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.core.integrity.ProofFile;
import org.benchtrail.core.integrity.SignedNote;
import org.jspecify.annotations.Nullable;

/**
 * The trail of one ticket as a file of JSON Lines: first what it is and the head of the log, then a line for each entry, with the proof
 * that it is in the log of that head. Every line is written in one way only, so that a byte more or less is seen.
 */
public final class TrailLines {
    static final String FORMAT = "benchtrail-trail/1";
    static final String POLICIES = "policies";
    static final String WORDS = "words";

    private TrailLines() {}

    /**
     * @param head the signed note that all proofs lead to
     * @param policies by which the entries were decided, each by the name that entries give it: its lines, of which the name is the hash
     */
    public static String first(String ticket, SignedNote head, SortedMap<String, String> policies) {
        ObjectNode line = JsonNodeFactory.instance
                .objectNode()
                .put("format", FORMAT)
                .put("ticket", ticket)
                .put("head", head.toString());
        if (!policies.isEmpty()) {
            ObjectNode named = line.putObject(POLICIES);
            policies.forEach(named::put);
        }
        return line.toString();
    }

    /**
     * An entry.
     *
     * @param canonical the bytes that were hashed, as text; null if whoever asks may not read them
     * @param words that the bytes hold commitments to, as JSON; null if there are none, or none any more
     * @param proof null if the head does not cover it yet
     */
    public static String entry(
            @Nullable String canonical, @Nullable String words, String hash, @Nullable ProofFile proof) {
        return entry(
                canonical, words, hash, proof == null ? null : proof.index(), proof == null ? List.of() : proof.path());
    }

    /**
     * Entries that are lost, after which the trail goes on.
     *
     * @param record of the incident that says so and who agreed, the bytes that were hashed as text
     */
    public static String hole(String record, @Nullable ProofFile proof) {
        return hole(record, proof == null ? null : proof.index(), proof == null ? List.of() : proof.path());
    }

    static String hole(String record, @Nullable Long leaf, List<Hash> path) {
        ObjectNode line = JsonNodeFactory.instance.objectNode();
        return proven(line.put("hole", record), leaf, path);
    }

    static String entry(
            @Nullable String canonical, @Nullable String words, String hash, @Nullable Long leaf, List<Hash> path) {
        ObjectNode line = JsonNodeFactory.instance.objectNode().put("entry", canonical);
        if (words != null) {
            line.put(WORDS, words);
        }
        return proven(line.put("hash", hash), leaf, path);
    }

    private static String proven(ObjectNode line, @Nullable Long leaf, List<Hash> path) {
        line.put("leaf", leaf);
        ArrayNode hashes = line.putArray("proof");
        path.forEach(h -> hashes.add(h.base64()));
        return line.toString();
    }
}
