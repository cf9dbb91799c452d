package org.benchtrail.core.audit;

import java.time.Duration;

/**
 * The numbers by which signals are made. The usual ones are common practice, none measured; that is why each signal's worth is.
 *
 * @param shortText characters below which a text that was asked for is short
 * @param fewestWords different words below which it is
 * @param ticketsAlike tickets of the lot on which one person wrote the same
 * @param wordsInARow that stand in another ticket's summary as well
 * @param justBefore below this an expectation came just before its result
 * @param usualTime above this a check usually takes longer
 * @param batch facts of one step that came at once
 * @param batchWithin the time in which they came
 * @param batchLate above this they came late
 * @param leftWithin in this a step was entered and left
 * @param timesTheUsual how many times more than usual were closed in the last working hour
 */
public record SignalNumbers(
        int shortText,
        int fewestWords,
        int ticketsAlike,
        int wordsInARow,
        Duration justBefore,
        Duration usualTime,
        int batch,
        Duration batchWithin,
        Duration batchLate,
        Duration leftWithin,
        int timesTheUsual) {
    public static final SignalNumbers USUAL = new SignalNumbers(
            15,
            3,
            3,
            8,
            Duration.ofSeconds(20),
            Duration.ofMinutes(2),
            5,
            Duration.ofSeconds(60),
            Duration.ofHours(1),
            Duration.ofSeconds(30),
            3);

    /** @throws IllegalArgumentException if with one of them nothing would be a signal, or everything */
    public SignalNumbers {
        require(shortText >= 0 && shortText <= 1000, "short-text is 0 to 1000 characters");
        require(fewestWords >= 0 && fewestWords <= 100, "fewest-words is 0 to 100");
        require(ticketsAlike >= 2 && ticketsAlike <= 1000, "tickets-alike is 2 to 1000");
        require(wordsInARow >= 3 && wordsInARow <= 100, "words-in-a-row is 3 to 100");
        require(batch >= 2 && batch <= 1000, "batch is 2 to 1000 facts");
        require(timesTheUsual >= 1 && timesTheUsual <= 1000, "times-the-usual is 1 to 1000");
        for (Duration time : new Duration[] {justBefore, usualTime, batchWithin, batchLate, leftWithin}) {
            require(!time.isNegative() && time.compareTo(Duration.ofDays(30)) <= 0, "a time is PT0S to P30D");
        }
    }

    private static void require(boolean holds, String allowed) {
        if (!holds) {
            throw new IllegalArgumentException("Signals of an audit: " + allowed + ".");
        }
    }
}
