package org.benchtrail.core.integrity;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The keys of a log, as its records of them tell: the first is taken at its word, each further one counts only if a key that was
 * good before it signed for it. Whoever can write into the database can write such a record, and not that signature.
 *
 * @param origin name of the log; null before the first key
 * @param good the keys that sign
 * @param until for each that ever signed the largest head that it signs: one that is retired signs none that holds the leaf that says so
 * @param strangers places, from 0, of the records that name a key which nobody signed for
 */
public record KeyHistory(@Nullable String origin, Set<String> good, Map<String, Long> until, List<Integer> strangers) {
    /** What a record says of a key that signs no more. */
    public static final String RETIRED = "retired";

    /**
     * A record of a key.
     *
     * @param act {@link #RETIRED}, or anything else where it begins to sign
     * @param key as a verifier key
     * @param origin of the first; empty in others
     * @param signature line by which an earlier key signed for it; empty in the first
     * @param leaf of the record; null while it is not sealed
     */
    public record Told(
            String act,
            String key,
            String origin,
            String signature,
            @Nullable Long leaf) {}

    /** In the order of the records. */
    public static KeyHistory of(List<Told> records) {
        Set<String> good = new LinkedHashSet<>();
        Map<String, Long> until = new LinkedHashMap<>();
        List<Integer> strangers = new ArrayList<>();
        for (int place = 0; place < records.size(); place++) {
            Told told = records.get(place);
            if (place > 0 && told.act().equals(RETIRED)) {
                good.remove(told.key());
                until.computeIfPresent(told.key(), (key, ever) -> told.leaf() == null ? ever : told.leaf());
            } else if (place == 0 || isVouchedFor(told, good)) {
                good.add(told.key());
                until.put(told.key(), Long.MAX_VALUE);
            } else {
                strangers.add(place);
            }
        }
        @Nullable String origin = records.isEmpty() ? null : records.get(0).origin();
        return new KeyHistory(origin, good, until, List.copyOf(strangers));
    }

    /** The keys whose signature of a head of that size is the log's; what was altered so that it is no key is none. */
    public List<VerifierKey> signing(long size) {
        return until.entrySet().stream()
                .filter(key -> size <= key.getValue())
                .flatMap(key -> parsed(key.getKey()).stream())
                .toList();
    }

    private static Optional<VerifierKey> parsed(String key) {
        try {
            return Optional.of(VerifierKey.parse(key));
        } catch (IllegalArgumentException altered) {
            return Optional.empty();
        }
    }

    /** What a key that is good signs for another one. */
    public static String vouched(String key) {
        return key + "\n";
    }

    private static boolean isVouchedFor(Told told, Set<String> good) {
        try {
            SignedNote.Line line = SignedNote.Line.parse(told.signature());
            return good.stream()
                    .flatMap(key -> parsed(key).stream())
                    .anyMatch(key -> key.isOf(line) && key.verifies(vouched(told.key()), line));
        } catch (IllegalArgumentException e) {
            return false;
        }
    }
}
