package org.benchtrail.core.method.desk;

import java.util.List;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Sight;
import org.benchtrail.core.method.Stamp;

/** That a forecast was made, or that none is made; either opens what it was due before. */
public sealed interface ForecastFact extends DeskFact permits ForecastCommitted, ForecastSkipped {
    ForecastKind forecast();

    /** Account of whoever it is that says no more, or said something, before seeing. */
    String forecaster(Stamp stamp);

    /** To say what one expects touches nothing. */
    @Override
    default boolean possibleWhileStopped() {
        return true;
    }

    /** Only the forecast that is due now can be made or skipped: one that is late says nothing. */
    static List<Missing> unlessDue(JobSheet sheet, Actor forecaster, ForecastKind kind) {
        return Sight.of(sheet, forecaster) instanceof Sight.Veiled veiled && veiled.due() == kind
                ? List.of()
                : Missing.rule(
                        "forecast-not-due",
                        "No such forecast is due here now: it was made or skipped, or what it is about was seen.",
                        Sight.ANCHOR);
    }
}
