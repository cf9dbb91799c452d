package org.benchtrail.core.method.verify;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.ReadingVerdict;

/** Which readings have to be taken again: held against the limit that they broke, in whatever unit they are taken now. */
public final class ReadingsBack {
    private ReadingsBack() {}

    /** Of every quantity-at-a-point that was once outside and is not proven back within, the latest reading that was outside. */
    public static List<StandingFact<ReadingRecorded>> outstanding(JobSheet sheet) {
        List<StandingFact<ReadingRecorded>> open = new ArrayList<>();
        for (StandingFact<ReadingRecorded> outside : sheet.owed(ReadingRecorded.class)) {
            if (outside.fact().verdict() == ReadingVerdict.OUTSIDE && !isBack(sheet, outside.fact())) {
                open.removeIf(r -> r.fact().samePlace(outside.fact()));
                open.add(outside);
            }
        }
        return open;
    }

    private static boolean isBack(JobSheet sheet, ReadingRecorded outside) {
        return again(sheet, outside)
                .filter(r -> r.fact().isWithinLimitOf(outside))
                .isPresent();
    }

    /** The latest reading at that place, if it was taken since the last work: to put an old one right is not to measure again. */
    public static Optional<StandingFact<ReadingRecorded>> again(JobSheet sheet, ReadingRecorded outside) {
        return sheet.latest(ReadingRecorded.class, r -> r.fact().samePlace(outside))
                .filter(r -> r.isAfter(sheet.lastWork()) && r.corrected() == null);
    }

    /** Entry with which something was last found outside, or said to be; 0 if nothing was. */
    static int lastOutside(JobSheet sheet) {
        return sheet.owed(ReadingRecorded.class).stream()
                .filter(r -> r.fact().verdict() == ReadingVerdict.OUTSIDE)
                .mapToInt(StandingFact::settledSince)
                .max()
                .orElse(0);
    }
}
