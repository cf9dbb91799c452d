package org.benchtrail.platform;

import org.jspecify.annotations.Nullable;

/** The change was based on a version that somebody else has replaced meanwhile. */
public final class Stale extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient @Nullable Object current;

    /** @param current what is stored now, a view record; shown to the person so that both values can be compared */
    public Stale(@Nullable Object current) {
        super("Somebody else changed this meanwhile.");
        this.current = current;
    }

    public @Nullable Object current() {
        return current;
    }
}
