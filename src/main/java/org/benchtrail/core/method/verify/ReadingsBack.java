package org.benchtrail.core.method.verify;

import java.util.ArrayList;
import java.util.List;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.ReadingVerdict;

/** Which readings have to be taken again. */
public final class ReadingsBack {
    private ReadingsBack() {}

    /** The latest reading of every quantity-at-a-point that was once outside and is not proven back within. */
    public static List<StandingFact<ReadingRecorded>> outstanding(JobSheet sheet) {
        List<StandingFact<ReadingRecorded>> latest = new ArrayList<>();
        List<StandingFact<ReadingRecorded>> all = sheet.all(ReadingRecorded.class);
        for (StandingFact<ReadingRecorded> outside : all) {
            if (outside.fact().verdict() == ReadingVerdict.OUTSIDE) {
                latest.removeIf(r -> r.fact().samePlace(outside.fact()));
                all.stream()
                        .filter(r -> r.fact().samePlace(outside.fact()))
                        .reduce((a, b) -> b)
                        .ifPresent(latest::add);
            }
        }
        latest.removeIf(r -> r.entry() > sheet.lastWork() && r.fact().verdict() == ReadingVerdict.WITHIN);
        return latest;
    }
}
