package org.benchtrail.knowledge;

import java.util.List;

/**
 * What a search found in one index, the best first.
 *
 * @param keys serials or numbers
 * @param total how many fit, of those looked at
 * @param whole whether everything that fits was ranked; otherwise only the newest of it
 */
record RankedKeys(List<Long> keys, int total, boolean whole) {
    RankedKeys {
        keys = List.copyOf(keys);
    }

    List<Long> page(int page, int size) {
        int from = Math.min(keys.size(), page * size);
        return keys.subList(from, Math.min(keys.size(), from + size));
    }

    boolean continues(int page, int size) {
        return keys.size() > (page + 1) * size;
    }
}
