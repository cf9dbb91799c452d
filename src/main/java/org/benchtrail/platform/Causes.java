package org.benchtrail.platform;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** All that a failure was caused by: a transaction that fails as it ends tells why only beside the causes, as suppressed. */
public final class Causes {
    private static final int DEEPEST = 100;

    private Causes() {}

    /** Itself, what caused it, what was suppressed, and theirs; the nearest first. */
    public static Set<Throwable> of(Throwable failure) {
        Set<Throwable> seen = new LinkedHashSet<>();
        Deque<Throwable> open = new ArrayDeque<>();
        open.add(failure);
        while (!open.isEmpty() && seen.size() < DEEPEST) {
            Throwable one = open.remove();
            if (seen.add(one)) {
                Throwable cause = one.getCause();
                if (cause != null) {
                    open.add(cause);
                }
                open.addAll(List.of(one.getSuppressed()));
            }
        }
        return seen;
    }
}
