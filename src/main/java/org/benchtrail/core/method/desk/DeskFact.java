package org.benchtrail.core.method.desk;

import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.Step;
import org.jspecify.annotations.Nullable;

/** What happens at the desk: opening, moves between steps, hand-overs, waivers, corrections, refusals. */
public sealed interface DeskFact extends Fact
        permits Addendum,
                AddendumCountersigned,
                Asked,
                CautionsAcknowledged,
                Corrected,
                ForecastFact,
                LesseningAgreed,
                MoveFact,
                Opened,
                PresenceEnded,
                PresenceSigned,
                Refused,
                Remarked,
                SentBack,
                Waived {
    @Override
    default @Nullable Step step() {
        return null;
    }
}
