package org.benchtrail.core.practice;

import java.time.Duration;
import java.time.Instant;
import org.benchtrail.core.Invalid;

/**
 * The time of a practice job. It begins at the job's invented morning and goes on by acts alone: typing costs nothing.
 *
 * @param start the job's morning
 * @param handsOn minutes in which somebody worked
 * @param waiting minutes in which the device worked alone: a copy, a rebuild, a run under load
 */
public record VirtualClock(Instant start, double handsOn, double waiting) {
    private static final double MILLIS = 60_000;

    public VirtualClock {
        if (!(handsOn >= 0 && waiting >= 0)) {
            throw new Invalid("minutes", "Time goes forward: give minutes from 0 on.");
        }
    }

    public static VirtualClock at(Instant morning) {
        return new VirtualClock(morning, 0, 0);
    }

    public VirtualClock worked(double minutes) {
        return new VirtualClock(start, handsOn + forward(minutes), waiting);
    }

    public VirtualClock waited(double minutes) {
        return new VirtualClock(start, handsOn, waiting + forward(minutes));
    }

    /** Minutes from the start, worked and waited. */
    public double elapsed() {
        return handsOn + waiting;
    }

    public Instant now() {
        return start.plus(Duration.ofMillis(Math.round(elapsed() * MILLIS)));
    }

    private static double forward(double minutes) {
        if (!(minutes >= 0)) {
            throw new Invalid("minutes", "Time goes forward: give minutes from 0 on.");
        }
        return minutes;
    }
}
