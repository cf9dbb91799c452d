package org.benchtrail.core.integrity;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Proof that one leaf is in a log, to be handed on with it (C2SP tlog-proof).
 *
 * @param index of the leaf
 * @param path the sibling of the leaf first
 * @param note the checkpoint as it was signed
 */
public record ProofFile(long index, List<Hash> path, SignedNote note) {
    private static final String FIRST = "c2sp.org/tlog-proof@v1";
    private static final Pattern WHOLE = Pattern.compile(
            FIRST + "\n(?:extra [A-Za-z0-9+/=]*\n)?index (0|[1-9][0-9]{0,18})\n((?:[A-Za-z0-9+/]{43}=\n){0,63})\n(.*)",
            Pattern.DOTALL);

    public ProofFile {
        path = List.copyOf(path);
    }

    /** @throws IllegalArgumentException if it is no proof file */
    public static ProofFile parse(String text) {
        Matcher parts = WHOLE.matcher(text);
        if (!parts.matches()) {
            throw new IllegalArgumentException("not a proof of a log");
        }
        List<Hash> path = new ArrayList<>();
        parts.group(2).lines().forEach(line -> path.add(Hash.ofBase64(line)));
        return new ProofFile(Long.parseLong(parts.group(1)), path, SignedNote.parse(parts.group(3)));
    }

    /** Whether the leaf is in the tree that the checkpoint speaks of; who signed that is another question. */
    public boolean holds(Leaf leaf) {
        Checkpoint checkpoint = Checkpoint.parse(note.text());
        return MerkleProofs.includes(index, checkpoint.size(), leaf.leafHash(), path, checkpoint.root());
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder(FIRST + "\nindex " + index + "\n");
        path.forEach(hash -> text.append(hash.base64()).append('\n'));
        return text.append('\n').append(note).toString();
    }
}
