package org.benchtrail.core.practice.job;

import java.util.Collections;
import java.util.HashMap;
import java.util.Map;

/** How often each thing was done: the noise of a reading depends on it, and on nothing else that was done. */
record TimesDone(Map<String, Integer> counts) {
    static final TimesDone NONE = new TimesDone(Map.of());

    int of(String what) {
        return counts.getOrDefault(what, 0);
    }

    boolean any(DeviceAct act) {
        return of(act.name()) > 0;
    }

    TimesDone once(String what) {
        Map<String, Integer> more = new HashMap<>(counts);
        more.merge(what, 1, Integer::sum);
        return new TimesDone(Collections.unmodifiableMap(more));
    }
}
