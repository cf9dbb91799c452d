package org.benchtrail.core.method.test;

import org.benchtrail.core.text.FieldChecks;
import org.jspecify.annotations.Nullable;

/**
 * The result of a check.
 *
 * @param check entry number of the check
 * @param observation what was seen
 * @param outcome what it says about the theory
 * @param reading entry number of the reading it rests on; null for a plain observation
 * @param answer which value of the check's finding it showed; null if the check answers none
 */
public record ResultRecorded(
        int check,
        String observation,
        CheckOutcome outcome,
        @Nullable Integer reading,
        @Nullable String answer) implements TestFact {
    public ResultRecorded {
        FieldChecks t = new FieldChecks();
        observation = t.required("observation", observation, FieldChecks.PARAGRAPH, "Say what was seen.");
        t.require(outcome != null, "outcome", "Say whether it supports the theory, rules it out, or leaves it open.");
        answer = t.orNull("answer", answer, 40);
        t.done();
    }

    /** The result of a check that answers no finding of the catalogue. */
    public ResultRecorded(int check, String observation, CheckOutcome outcome, @Nullable Integer reading) {
        this(check, observation, outcome, reading, null);
    }
}
