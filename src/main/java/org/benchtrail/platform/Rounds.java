package org.benchtrail.platform;

import java.time.Duration;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;

/** Work that is done again and again beside everything else, on a thread of its own. */
public final class Rounds {
    private static final int FIRST_AFTER_S = 1;
    private static final int LAST_ROUND_S = 5;

    private final ScheduledExecutorService timer;

    /** @param name of the thread */
    public Rounds(String name) {
        timer = Executors.newSingleThreadScheduledExecutor(work -> {
            Thread thread = new Thread(work, name);
            thread.setDaemon(true);
            return thread;
        });
    }

    /**
     * Begins.
     *
     * @param every pause between two rounds; none is ever begun at zero
     * @param round throws nothing: else it was the last one
     */
    public void begin(Duration every, Runnable round) {
        begin(every, () -> {}, round);
    }

    /** As {@link #begin(Duration, Runnable)}, with something that is done once before the first round. */
    public void begin(Duration every, Runnable first, Runnable round) {
        if (!every.isZero()) {
            timer.execute(first);
            timer.scheduleWithFixedDelay(
                    round, Duration.ofSeconds(FIRST_AFTER_S).toMillis(), every.toMillis(), TimeUnit.MILLISECONDS);
        }
    }

    /** Begins none any more, and waits some seconds for the one that is going on. */
    public void end() {
        timer.shutdown();
        try {
            timer.awaitTermination(LAST_ROUND_S, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
