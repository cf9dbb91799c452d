package org.benchtrail.core.practice.job;

import java.util.Collections;
import java.util.HashMap;
import java.util.Map;

/** How often each thing was done: the noise of a reading depends on it, and on nothing else that was done. */
record Times(Map<String, Integer> counts) {
    static final Times NONE = new Times(Map.of());

    int of(String what) {
        return counts.getOrDefault(what, 0);
    }

    boolean any(Act act) {
        return of(act.name()) > 0;
    }

    Times once(String what) {
        Map<String, Integer> more = new HashMap<>(counts);
        more.merge(what, 1, Integer::sum);
        return new Times(Collections.unmodifiableMap(more));
    }
}
