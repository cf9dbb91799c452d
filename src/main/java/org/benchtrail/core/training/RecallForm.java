package org.benchtrail.core.training;

import java.util.Locale;

/** What a question asks for, and how it is answered. */
public enum RecallForm {
    /** What was still missing when a step was tried to be left. */
    NEXT_LACK(Answering.ANY),
    /** Which single act tells one fault from another. */
    TOLD_APART(Answering.ONE),
    /** On which side of its limit a value lies, with what the instrument is good for. */
    VALUE(Answering.ONE),
    /** In which order acts are done. */
    WHAT_FIRST(Answering.ORDER),
    /** Which requirement an entry does not meet. */
    WHY(Answering.ONE),
    /** How long a fault has to stay away. */
    ESTIMATE(Answering.NUMBER);

    /** How it is answered. */
    public enum Answering {
        ONE,
        /** All that are right, and no other. */
        ANY,
        ORDER,
        NUMBER
    }

    private final Answering answering;

    RecallForm(Answering answering) {
        this.answering = answering;
    }

    public Answering answering() {
        return answering;
    }

    /** The beginning of the name of its questions; stored, never renamed. */
    public String id() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
