package org.benchtrail.core.method.verify;

import java.util.List;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Policy;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.identify.Reproduction;
import org.benchtrail.core.method.identify.ReproductionTried;
import org.benchtrail.core.method.identify.SoakTimeReckoned;
import org.benchtrail.core.method.identify.SymptomRecorded;

/** How long an intermittent fault has to run clean, and whether it has. */
public final class SoakTime {
    private SoakTime() {}

    static String lacking(Situation s) {
        if (!intermittent(s.sheet())) {
            return "";
        }
        List<StandingFact<SoakRun>> runs =
                s.sheet().all(SoakRun.class, r -> r.entry() > s.sheet().lastWork());
        if (runs.stream().anyMatch(r -> r.fact().recurred())) {
            return "It came back during the soak time: report that it persists.";
        }
        long minutes = runs.stream().mapToLong(r -> r.fact().minutes()).sum();
        long needed = needed(s.sheet(), s.policy());
        return minutes >= needed
                ? ""
                : "The fault was intermittent: let it run " + needed / 60 + " h without recurring (so far "
                        + minutes / 60 + " h " + minutes % 60 + " min).";
    }

    /** The policy's time, or the calculated one if that is longer. */
    public static long needed(JobSheet sheet, Policy policy) {
        long reckoned = sheet.latest(SoakTimeReckoned.class)
                .map(r -> (long) r.fact().minutes())
                .orElse(0L);
        return Math.max(policy.soakTime().toMinutes(), reckoned);
    }

    private static boolean intermittent(JobSheet sheet) {
        return sheet.all(SymptomRecorded.class).stream().anyMatch(x -> x.fact().intermittent())
                || sheet.latest(ReproductionTried.class)
                        .filter(r -> r.fact().outcome() == Reproduction.INTERMITTENT)
                        .isPresent();
    }
}
