package org.benchtrail.core.training;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What the coach has to say of one requirement; the same on every job.
 *
 * @param why what the requirement is for
 * @param good what a good answer holds
 * @param before of the example, up to the part that is left open at the second level
 * @param blank that part
 * @param after what follows it
 * @param poor an answer that looks like one
 * @param fails why it is none
 * @param judge who can say whether an answer is good
 */
public record CoachText(
        String code,
        String why,
        String good,
        String before,
        String blank,
        String after,
        String poor,
        String fails,
        Judge judge) {
    private static final Pattern EXAMPLE = Pattern.compile("([^\\[\\]]*)\\[\\[([^\\[\\]]+)]]([^\\[\\]]*)");

    /** Who can say whether an answer is good. */
    public enum Judge {
        /** What is true of a practice device, or a person. */
        M,
        /** A person alone. */
        P
    }

    /**
     * @param example with exactly one part in [[ ]]
     * @throws IllegalArgumentException if a text is missing, or the example has no such part or several
     */
    public static CoachText of(
            String code, String why, String good, String example, String poor, String fails, Judge judge) {
        Matcher parts = EXAMPLE.matcher(example);
        if (!parts.matches()) {
            throw new IllegalArgumentException(code + ": the example has exactly one part in [[ ]]");
        }
        for (String text : new String[] {why, good, poor, fails}) {
            if (text.isBlank()) {
                throw new IllegalArgumentException(code + ": no text is empty");
            }
        }
        return new CoachText(code, why, good, parts.group(1), parts.group(2), parts.group(3), poor, fails, judge);
    }
}
