package org.benchtrail.core.figures;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.benchtrail.core.statistics.KaplanMeier;
import org.benchtrail.core.statistics.KaplanMeier.Observation;

/**
 * How long something lasts, of which some still do: an average of what has ended alone would forget the slow ones. What was left
 * otherwise than it is meant to is known to have lasted at least as long, as is what still lasts.
 *
 * @param ended as it is meant to
 * @param back left for an earlier step
 * @param cancelled with the ticket
 * @param open still lasting
 * @param estimate share that still lasts, by time in hours
 */
public record Lasting(int ended, int back, int cancelled, int open, KaplanMeier estimate) {
    /** So many have to have ended before a time or a curve is shown; common practice. */
    public static final int ENOUGH = 10;

    private static final int MOST_STEPS = 40;
    private static final double CLEAR = 0.025;
    private static final double MOST_SLOW = 0.1;

    /** @param hours 0 or more */
    public record Lasted(double hours, Leaving how) {}

    public static Lasting of(List<Lasted> all) {
        int[] counts = new int[Leaving.values().length];
        all.forEach(one -> counts[one.how().ordinal()]++);
        List<Observation> observed = observed(all);
        return new Lasting(
                counts[Leaving.FORWARD.ordinal()],
                counts[Leaving.BACK.ordinal()],
                counts[Leaving.CANCELLED.ordinal()],
                counts[Leaving.OPEN.ordinal()],
                observed.isEmpty() ? new KaplanMeier(List.of()) : KaplanMeier.of(observed));
    }

    static List<Observation> observed(List<Lasted> all) {
        return all.stream()
                .map(one -> new Observation(one.hours(), one.how().isEnd()))
                .toList();
    }

    /** How many were still watched just before a time: the numbers at risk. */
    public static long watched(List<Lasted> all, double hours) {
        return all.stream().filter(one -> one.hours() >= hours).count();
    }

    public int all() {
        return ended + back + cancelled + open;
    }

    public boolean isEnough() {
        return ended >= ENOUGH;
    }

    /** Hours after which half have ended; empty if too few have, or fewer than half. */
    public OptionalDouble median() {
        return isEnough() ? estimate.median() : OptionalDouble.empty();
    }

    /** Hours after which nine in ten have ended; empty if too few have, or fewer than that. */
    public OptionalDouble ninetieth() {
        return isEnough() ? estimate.whenLeft(MOST_SLOW) : OptionalDouble.empty();
    }

    /**
     * The curve; empty if too few have ended. Of more than 40 steps those are kept before which the share has fallen by more than
     * 2.5 in 100 since the one kept last, and the last of all.
     */
    public List<KaplanMeier.Step> curve() {
        if (!isEnough()) {
            return List.of();
        }
        List<KaplanMeier.Step> all = estimate.steps();
        if (all.size() <= MOST_STEPS) {
            return all;
        }
        List<KaplanMeier.Step> kept = new ArrayList<>();
        double last = 1;
        for (KaplanMeier.Step step : all) {
            if (last - step.survival() > CLEAR || step == all.get(all.size() - 1)) {
                kept.add(step);
                last = step.survival();
            }
        }
        return kept;
    }
}
