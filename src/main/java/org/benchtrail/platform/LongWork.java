package org.benchtrail.platform;

import java.time.Duration;
import java.util.function.Consumer;

/** Tells whoever waits for a command how far it is, every few seconds; nothing of work that is done before. */
public final class LongWork {
    private static final Duration REST = Duration.ofSeconds(3);

    private final Consumer<String> told;
    private final Duration rest;
    private long last = System.nanoTime();

    /** @param told hears a line each time */
    public LongWork(Consumer<String> told) {
        this(told, REST);
    }

    LongWork(Consumer<String> told, Duration rest) {
        this.told = told;
        this.rest = rest;
    }

    /** @param what of what, in the plural */
    public void at(long done, long all, String what) {
        long now = System.nanoTime();
        if (now - last >= rest.toNanos()) {
            last = now;
            told.accept(String.format("  %d of %d %s", done, all, what));
        }
    }
}
