package org.benchtrail.platform.database;

import java.io.IOException;
import java.time.Duration;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/**
 * Starts PostgreSQL again when it dies while it is wanted, at the same port, so that whoever uses it only has to connect anew.
 * After three times in ten minutes it gives up.
 */
final class Supervision implements Runnable {
    private static final Duration LOOK = Duration.ofMillis(500);

    private final Postmaster postmaster;
    private final int port;
    private final BooleanSupplier wanted;
    private final Progress progress;
    private final Consumer<String> givenUp;
    private final Restarts restarts = new Restarts(3, Duration.ofMinutes(10));

    /** @param givenUp hears in a sentence why there is no database any more */
    Supervision(Postmaster postmaster, int port, BooleanSupplier wanted, Progress progress, Consumer<String> givenUp) {
        this.postmaster = postmaster;
        this.port = port;
        this.wanted = wanted;
        this.progress = progress;
        this.givenUp = givenUp;
    }

    @Override
    public void run() {
        try {
            while (wanted.getAsBoolean()) {
                if (!postmaster.runs() && !again()) {
                    return;
                }
                Thread.sleep(LOOK.toMillis());
            }
        } catch (InterruptedException noLongerWanted) {
            Thread.currentThread().interrupt();
        }
    }

    /** Whether to go on watching. */
    private boolean again() {
        if (!wanted.getAsBoolean()) {
            return false;
        }
        if (!restarts.take(System.nanoTime())) {
            givenUp.accept(
                    "PostgreSQL ended four times in ten minutes and is not started again. The last lines of its log say why:\n"
                            + tail());
            return false;
        }
        progress.tell("PostgreSQL has ended; starting it again ...");
        try {
            postmaster.endOrphan(progress);
            postmaster.start(() -> port, progress);
            return true;
        } catch (IOException | DatabaseNotStarted failure) {
            if (wanted.getAsBoolean()) {
                givenUp.accept("PostgreSQL ended and could not be started again: " + failure.getMessage());
            }
            return false;
        }
    }

    private String tail() {
        try {
            return postmaster.tail();
        } catch (IOException unreadable) {
            return "(its log cannot be read: " + unreadable.getMessage() + ")";
        }
    }
}
