package org.benchtrail.core.integrity;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The keys of a log, as its records of them tell: the first is taken at its word, each further one counts only if a key that was
 * good before it signed for it. Whoever can write into the database can write such a record, and not that signature.
 *
 * @param origin name of the log; null before the first key
 * @param good the keys that sign
 * @param named all that ever signed
 * @param strangers places, from 0, of the records that name a key which nobody signed for
 */
public record KeyHistory(@Nullable String origin, Set<String> good, Set<String> named, List<Integer> strangers) {
    /** What a record says of a key that signs no more. */
    public static final String RETIRED = "retired";

    /**
     * A record of a key.
     *
     * @param act {@link #RETIRED}, or anything else where it begins to sign
     * @param key as a verifier key
     * @param origin of the first; empty in others
     * @param signature line by which an earlier key signed for it; empty in the first
     */
    public record Told(String act, String key, String origin, String signature) {}

    /** In the order of the records. */
    public static KeyHistory of(List<Told> records) {
        @Nullable String origin = null;
        Set<String> good = new LinkedHashSet<>();
        Set<String> named = new LinkedHashSet<>();
        List<Integer> strangers = new ArrayList<>();
        for (int place = 0; place < records.size(); place++) {
            Told told = records.get(place);
            if (place == 0) {
                origin = told.origin();
            }
            if (place > 0 && told.act().equals(RETIRED)) {
                good.remove(told.key());
            } else if (place == 0 || isVouchedFor(told, good)) {
                good.add(told.key());
                named.add(told.key());
            } else {
                strangers.add(place);
            }
        }
        return new KeyHistory(origin, good, named, List.copyOf(strangers));
    }

    /** What a key that is good signs for another one. */
    public static String vouched(String key) {
        return key + "\n";
    }

    private static boolean isVouchedFor(Told told, Set<String> good) {
        try {
            SignedNote.Line line = SignedNote.Line.parse(told.signature());
            return good.stream()
                    .map(VerifierKey::parse)
                    .anyMatch(key -> key.isOf(line) && key.verifies(vouched(told.key()), line));
        } catch (IllegalArgumentException e) {
            return false;
        }
    }
}
