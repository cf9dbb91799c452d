package org.benchtrail.core.diagnosis;

import java.util.List;

/**
 * Words that suggest an answer; they weigh nothing until somebody gives it.
 *
 * @param finding id in the same category
 * @param value one of the finding's values, or {@link #ASK}
 * @param words each a phrase
 */
public record Phrases(String finding, String value, List<Phrase> words) {
    /** Only the question is worth asking. */
    public static final String ASK = "ask";

    public Phrases {
        words = List.copyOf(words);
    }
}
