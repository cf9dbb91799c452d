package org.benchtrail.core.integrity;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What a log asks of a witness (C2SP tlog-witness): to sign a checkpoint, which is proven to go on from the last one it signed.
 *
 * @param old size of the checkpoint that this witness signed last; 0 if none
 * @param path consistency proof from there; empty from 0
 */
public record AddCheckpoint(long old, List<Hash> path, SignedNote note) {
    private static final Pattern WHOLE =
            Pattern.compile("old (0|[1-9][0-9]{0,18})\n((?:[A-Za-z0-9+/]{43}=\n){0,63})\n(.*)", Pattern.DOTALL);

    public AddCheckpoint {
        path = List.copyOf(path);
    }

    /** @throws IllegalArgumentException if it is malformed */
    public static AddCheckpoint parse(String body) {
        Matcher parts = WHOLE.matcher(body);
        if (!parts.matches()) {
            throw new IllegalArgumentException("not a request to a witness");
        }
        List<Hash> path = new ArrayList<>();
        parts.group(2).lines().forEach(line -> path.add(Hash.ofBase64(line)));
        return new AddCheckpoint(Long.parseLong(parts.group(1)), path, SignedNote.parse(parts.group(3)));
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder("old " + old + "\n");
        path.forEach(hash -> text.append(hash.base64()).append('\n'));
        return text.append('\n').append(note).toString();
    }
}
