package org.benchtrail.core.method.document;

import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.Step;

/** What is recorded to document findings, actions and outcome. */
public sealed interface DocumentFact extends Fact
        permits CauseNamed, EffortRecorded, KnowledgeLinked, Signed, SummaryWritten {
    @Override
    default Step step() {
        return Step.DOCUMENT;
    }

    /** Whether a signature stands for it, and so is void as soon as it changes. */
    default boolean signedFor() {
        return true;
    }
}
