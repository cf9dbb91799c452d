package org.benchtrail.core.method.plan;

import java.util.List;
import java.util.Locale;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.StandingFact;

/** Whether every replacement part is known to fit where it goes. */
final class PartsFit {
    private PartsFit() {}

    static String lacking(Situation s) {
        List<String> open = open(s.sheet()).stream()
                .map(a -> String.valueOf(a.fact().part()))
                .toList();
        if (open.isEmpty()) {
            return "";
        }
        return refusedByBench(s.sheet())
                ? "The bench says that a part does not fit: check another one there, or have an override approved: "
                        + String.join("; ", open) + "."
                : "Check that the part fits its place, or have an override approved: " + String.join("; ", open) + ".";
    }

    /** Entry with which the latest part in question was planned or found not to fit; 0 if none is in question. */
    static int lastQuestion(JobSheet sheet) {
        int planned =
                open(sheet).stream().mapToInt(StandingFact::settledSince).max().orElse(0);
        int refused = sheet.latestOfRound(PartFitChecked.class).stream()
                .filter(f -> f.fact().fit() == Fit.DOES_NOT_FIT)
                .mapToInt(StandingFact::entry)
                .max()
                .orElse(0);
        return Math.max(planned, refused);
    }

    private static List<StandingFact<ActionPlanned>> open(JobSheet sheet) {
        return sheet.actions().stream()
                .filter(a -> a.fact().part() != null && !PlanRequirement.needless(sheet, a) && !fits(sheet, a))
                .toList();
    }

    private static boolean fits(JobSheet sheet, StandingFact<ActionPlanned> action) {
        return overridden(sheet, action)
                || sheet.latest(PartFitChecked.class, f -> f.fact().action() == action.entry())
                        .filter(f -> f.isAfter(action.settledSince()))
                        .filter(f -> f.fact().fit() != Fit.DOES_NOT_FIT)
                        .filter(f -> f.fact().result() != null || !refusedByBench(sheet))
                        .filter(f -> f.fact().result() != null || !refused(sheet, action))
                        .isPresent();
    }

    private static boolean overridden(JobSheet sheet, StandingFact<ActionPlanned> action) {
        return sheet.latest(PartOverrideApproved.class, o -> o.fact().action() == action.entry())
                .filter(o -> o.isAfter(action.settledSince()))
                .isPresent();
    }

    /** Whether this part, under that name, was found not to fit. */
    private static boolean refused(JobSheet sheet, StandingFact<ActionPlanned> action) {
        return sheet.ofRound(PartFitChecked.class).stream()
                .filter(f -> f.fact().fit() == Fit.DOES_NOT_FIT)
                .anyMatch(f -> f.fact().action() == action.entry()
                        || sheet.actions().stream()
                                .filter(a -> a.entry() == f.fact().action())
                                .anyMatch(a -> name(a).equals(name(action))));
    }

    /** What the bench refuses in a round is not outdone by a word: only by what the bench says of another part. */
    private static boolean refusedByBench(JobSheet sheet) {
        return sheet.ofRound(PartFitChecked.class).stream()
                .anyMatch(f -> f.fact().result() != null && f.fact().fit() == Fit.DOES_NOT_FIT);
    }

    private static String name(StandingFact<ActionPlanned> action) {
        return String.valueOf(action.fact().part()).toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]", "");
    }
}
