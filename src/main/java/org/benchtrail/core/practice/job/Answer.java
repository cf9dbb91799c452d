package org.benchtrail.core.practice.job;

import java.util.List;
import org.benchtrail.core.practice.Harm;
import org.jspecify.annotations.Nullable;

/**
 * How an act ended.
 *
 * @param after the device after it
 * @param words what somebody there sees or hears
 * @param seen null if it showed nothing that could be recorded
 * @param handsOn minutes worked, those that its harm costs included
 * @param waiting minutes in which the device worked alone
 * @param cost of parts and of harm
 * @param over whether the job ends with it
 */
public record Answer(
        PracticeDevice after,
        String words,
        @Nullable Seen seen,
        double handsOn,
        double waiting,
        double cost,
        List<Harm> harm,
        boolean over) {
    public Answer {
        harm = List.copyOf(harm);
    }

    static Answer of(PracticeDevice after, DeviceAct act, String words, @Nullable Seen seen) {
        return new Answer(after, words, seen, act.minutes(), 0, 0, List.of(), false);
    }

    /** What somebody said or what was seen; it can be that they do not know. */
    static Answer told(PracticeDevice after, DeviceAct act, Seen seen, String yes, String no) {
        String words = seen.value().equals(Seen.UNKNOWN)
                ? "They do not know."
                : seen.value().equals("yes") ? yes : no;
        return of(after, act, words, seen);
    }

    /** @param digits what the display shows */
    static Answer read(PracticeDevice after, DeviceAct act, String digits, Seen.Gauge gauge) {
        return of(after, act, digits + " " + gauge.unit(), new Seen(digits, gauge));
    }

    /** The same of another device, told in other words. */
    Answer of(PracticeDevice then, String told) {
        return new Answer(then, told, seen, handsOn, waiting, cost, harm, over);
    }

    /** One that showed nothing to record. */
    Answer withoutSeen() {
        return new Answer(after, words, null, handsOn, waiting, cost, harm, over);
    }

    Answer waited(double minutes) {
        return new Answer(after, words, seen, handsOn, waiting + minutes, cost, harm, over);
    }

    Answer costing(double parts) {
        return new Answer(after, words, seen, handsOn, waiting, cost + parts, harm, over);
    }

    /** With what it did besides, which costs minutes and money too. */
    Answer harming(List<Harm> more) {
        double minutes = more.stream().mapToDouble(Harm::minutes).sum();
        double money = more.stream().mapToDouble(Harm::cost).sum();
        return new Answer(after, words, seen, handsOn + minutes, waiting, cost + money, more, over);
    }

    Answer ending(boolean ends) {
        return new Answer(after, words, seen, handsOn, waiting, cost, harm, ends);
    }
}
