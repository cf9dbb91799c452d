package org.benchtrail.core.method.identify;

import java.util.List;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Step;
import org.jspecify.annotations.Nullable;

/** Evidence is taken at every step (a check's reading, the reading after the repair) and so is never late. */
public sealed interface EvidenceFact extends IdentifyFact
        permits AttachmentAdded,
                BenchResultAttached,
                ExtractRecorded,
                FindingAnswered,
                FindingRecorded,
                PictureMarked,
                ReadingRecorded,
                SoakTimeReckoned {
    @Override
    default @Nullable Step step() {
        return null;
    }

    @Override
    default Step shownUnder() {
        return Step.IDENTIFY;
    }

    /** Whoever sees something may record it. */
    @Override
    default List<Missing> refusedTo(Actor actor, Situation s) {
        return List.of();
    }
}
