package org.benchtrail.core.audit;

import org.benchtrail.core.Invalid;

/**
 * How many of a stratum are looked at: a share of it, but at least so many, and never more than there are.
 *
 * @param percent 0 to 100; 100 takes all
 * @param atLeast 0 or more; with a share of 0 this is the number
 */
public record Take(int percent, int atLeast) {
    public static final Take ALL = new Take(100, 0);

    private static final int TRAINEE_PERCENT = 25;
    private static final int TRAINEE_LEAST = 5;

    public Take {
        new Invalid.Collector()
                .require(percent >= 0 && percent <= 100, "percent", "Give a share from 0 to 100 %.")
                .require(atLeast >= 0, "atLeast", "Give how many at least, 0 or more.")
                .require(percent > 0 || atLeast > 0, "atLeast", "Of each part of the lot look at one ticket at least.")
                .throwIfAny();
    }

    /** What is taken of a stratum unless the plan says otherwise. */
    public static Take usual(Stratum stratum, int rest) {
        if (stratum.census()) {
            return ALL;
        }
        return stratum == Stratum.REST ? new Take(0, rest) : new Take(TRAINEE_PERCENT, TRAINEE_LEAST);
    }

    /** How many of that many. */
    public int of(int items) {
        int share = (int) ((items * (long) percent + 99) / 100);
        return Math.min(items, Math.max(share, atLeast));
    }

    /** Twice the share and twice the number. */
    public Take doubled() {
        return new Take(Math.min(100, 2 * percent), 2 * atLeast);
    }

    /** Whether it takes as many as the other, of however many there are. */
    public boolean isAtLeast(Take other) {
        return percent == 100 || (percent >= other.percent && atLeast >= other.atLeast);
    }

    /** In one word of a plan: {@code all}, {@code 59}, {@code 25%}, or {@code 25%/5}. */
    public String word() {
        if (percent == 100) {
            return "all";
        }
        String least = String.valueOf(atLeast);
        return percent == 0 ? least : percent + "%" + (atLeast == 0 ? "" : "/" + least);
    }

    /** @throws Invalid if it is no such word */
    public static Take parse(String word) {
        if (word.equals("all")) {
            return ALL;
        }
        if (!word.matches("[0-9]{1,6}|[0-9]{1,3}%(/[0-9]{1,6})?")) {
            throw new Invalid("take", "Write how many as 'all', '59', '25%' or '25%/5'.");
        }
        String[] parts = word.split("%/?", 2);
        boolean share = word.contains("%");
        int least = share && parts[1].isEmpty() ? 0 : Integer.parseInt(share ? parts[1] : parts[0]);
        return new Take(share ? Integer.parseInt(parts[0]) : 0, least);
    }
}
