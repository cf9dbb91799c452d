package org.benchtrail.platform;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/** Keeps what was asked for last, for as long as there is room. */
public final class LastUsed {
    private LastUsed() {}

    /**
     * An empty map for many threads, which forgets what was not asked for the longest.
     *
     * @param most entries kept, at least 1
     */
    public static <K, V> Map<K, V> map(int most) {
        return Collections.synchronizedMap(new LinkedHashMap<>(16, 0.75f, true) {
            @Override
            protected boolean removeEldestEntry(Map.Entry<K, V> eldest) {
                return size() > most;
            }
        });
    }
}
