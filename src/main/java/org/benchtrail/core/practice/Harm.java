package org.benchtrail.core.practice;

/**
 * What an act did beside what it was meant for.
 *
 * @param kind whom or what it hit
 * @param sentence what happened
 * @param minutes of work that it costs
 * @param cost of parts, in the money of the job
 */
public record Harm(Kind kind, String sentence, double minutes, double cost) {
    public enum Kind {
        PERSON,
        DATA,
        DEVICE,
        WORK
    }
}
