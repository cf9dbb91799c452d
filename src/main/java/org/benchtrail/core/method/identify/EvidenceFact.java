package org.benchtrail.core.method.identify;

import org.benchtrail.core.method.Step;
import org.jspecify.annotations.Nullable;

/** Evidence is taken at every step (a check's reading, the reading after the repair) and so is never late. */
public sealed interface EvidenceFact extends IdentifyFact
        permits AttachmentAdded,
                BenchResultAttached,
                ExtractRecorded,
                FindingAnswered,
                FindingRecorded,
                ReadingRecorded,
                SoakTimeReckoned {
    @Override
    default @Nullable Step step() {
        return null;
    }
}
