package org.benchtrail.ticket.identify;

import java.util.Locale;
import java.util.OptionalDouble;
import org.benchtrail.core.measure.Judgement;
import org.benchtrail.core.measure.Share;
import org.benchtrail.core.method.identify.ReadingRecorded;

/**
 * A reading in words, wherever one is shown.
 *
 * @param value with its unit
 * @param verdict in small letters, for the stylesheet
 * @param shape the sign that goes with the word
 * @param word the verdict, with the probability that the true value conforms where it can be told
 * @param limit with its unit; empty if there is none
 */
public record ReadingWords(String value, String verdict, String shape, String word, String limit) {
    /** In percent: in the far tails the assumed distribution is not to be trusted to more digits. */
    private static final double TOLD = 1;

    public static ReadingWords of(ReadingRecorded r) {
        String shape = switch (r.verdict()) {
            case WITHIN -> "\u25cf";
            case OUTSIDE -> "\u25b2";
            case TOO_CLOSE -> "\u25c6";
            case NOT_JUDGED -> "\u25cb";
        };
        return new ReadingWords(
                r.value() + "\u202f" + r.unit(),
                r.verdict().name().toLowerCase(Locale.ROOT).replace('_', '-'),
                shape,
                word(r),
                r.limitWords());
    }

    private static String word(ReadingRecorded r) {
        String verdict = switch (r.verdict()) {
            case WITHIN -> "within";
            case OUTSIDE -> "outside";
            case TOO_CLOSE -> "too close to call";
            case NOT_JUDGED -> "no limit given";
        };
        OptionalDouble probability = r.judgement().map(Judgement::probability).orElse(OptionalDouble.empty());
        return probability.isEmpty()
                ? verdict
                : verdict + ", " + Share.chance(probability.getAsDouble(), TOLD) + "\u202f% sure to be within";
    }
}
