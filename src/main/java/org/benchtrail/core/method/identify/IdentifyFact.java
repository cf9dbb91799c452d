package org.benchtrail.core.method.identify;

import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.Lasts;
import org.benchtrail.core.method.Part;
import org.benchtrail.core.method.Step;
import org.jspecify.annotations.Nullable;

/** What is recorded to identify the problem. Evidence may be added at any later step and is then marked late. */
public sealed interface IdentifyFact extends Fact
        permits ChangesAsked,
                DataAnswered,
                EvidenceFact,
                EvidenceImpossible,
                HazardsScreened,
                LikenessChecked,
                LogsReviewed,
                LossAccepted,
                OnsetRecorded,
                ReproductionTried,
                ScopeRecorded,
                StopWorkCleared,
                SymptomRecorded {
    @Override
    default @Nullable Step step() {
        return Step.IDENTIFY;
    }

    @Override
    default boolean lateAllowed() {
        return true;
    }

    /** Who is not the assignee adds what he has seen, and stays outside. */
    @Override
    default Part takesPart() {
        return Part.ASSIGNEES_WORK;
    }

    /** Whether it meets the requirement of evidence: a reading, an extract, a file, a result, or why there can be none. */
    default boolean countsAsEvidence() {
        return false;
    }

    @Override
    default Lasts lasts() {
        return Lasts.TICKET;
    }
}
