package org.benchtrail.core.method.verify;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Policy;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Step;
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
        List<StandingFact<SoakRun>> runs = runs(s.sheet(), s.sheet().lastWork());
        if (runs.stream().anyMatch(r -> r.fact().recurred())) {
            return "It came back during the soak time: report that it persists.";
        }
        long minutes = minutes(runs);
        long needed = needed(s.sheet(), s.policy());
        return minutes >= needed
                ? ""
                : "The fault was intermittent: let it run " + words(needed) + " without recurring (so far "
                        + words(minutes) + ").";
    }

    /** Hours, and minutes where they are not whole: "71 h 30 min". */
    public static String words(long minutes) {
        return minutes / 60 + " h" + (minutes % 60 == 0 ? "" : " " + minutes % 60 + " min");
    }

    /** The policy's time, or the calculated one if that is longer. */
    public static long needed(JobSheet sheet, Policy policy) {
        long reckoned = sheet.owed(SoakTimeReckoned.class).stream()
                .mapToLong(r -> r.fact().minutes())
                .max()
                .orElse(0);
        return Math.max(policy.soakTime().toMinutes(), reckoned);
    }

    /** The run that was started after the last action, unless the fault has come back since. */
    public static Optional<StandingFact<SoakStarted>> running(JobSheet sheet) {
        int ended = recurrences(sheet).mapToInt(StandingFact::entry).max().orElse(0);
        return sheet.latest(SoakStarted.class).filter(started -> started.isAfter(Math.max(ended, sheet.lastWork())));
    }

    /** When the run that is counted will have lasted long enough, if it does not come back; empty if none is counted or needed. */
    public static Optional<Instant> ends(JobSheet sheet, Policy policy) {
        long lacking = needed(sheet, policy) - minutes(runs(sheet, sheet.lastWork()));
        return sheet.step() != Step.VERIFY || !intermittent(sheet) || lacking <= 0
                ? Optional.empty()
                : running(sheet)
                        .map(started -> started.stamp().at().plus(Duration.ofMinutes(told(sheet, started) + lacking)));
    }

    /** Minutes that have passed since a run was started. */
    public static long passed(StandingFact<SoakStarted> started, Instant now) {
        return Duration.between(started.stamp().at(), now).toMinutes();
    }

    /** How many of them are recorded. */
    public static long told(JobSheet sheet, StandingFact<SoakStarted> started) {
        return minutes(runs(sheet, started.entry()));
    }

    private static List<StandingFact<SoakRun>> runs(JobSheet sheet, int after) {
        return sheet.all(SoakRun.class, r -> r.isAfter(after));
    }

    private static long minutes(List<StandingFact<SoakRun>> runs) {
        return runs.stream().mapToLong(r -> r.fact().minutes()).sum();
    }

    /** Entry with which the fault was last said to be intermittent, or to have come back; 0 if neither was. */
    static int lastSign(JobSheet sheet) {
        Stream<StandingFact<?>> signs = Stream.of(
                        symptoms(sheet), trials(sheet), sheet.owed(SoakTimeReckoned.class).stream(), recurrences(sheet))
                .flatMap(s -> s);
        return signs.mapToInt(StandingFact::settledSince).max().orElse(0);
    }

    static boolean intermittent(JobSheet sheet) {
        return Stream.concat(symptoms(sheet), trials(sheet)).findAny().isPresent();
    }

    private static Stream<StandingFact<SymptomRecorded>> symptoms(JobSheet sheet) {
        return sheet.owed(SymptomRecorded.class).stream().filter(x -> x.fact().intermittent());
    }

    private static Stream<StandingFact<ReproductionTried>> trials(JobSheet sheet) {
        return sheet.owed(ReproductionTried.class).stream()
                .filter(r -> r.fact().outcome() == Reproduction.INTERMITTENT);
    }

    private static Stream<StandingFact<SoakRun>> recurrences(JobSheet sheet) {
        return sheet.all(SoakRun.class, r -> r.fact().recurred()).stream();
    }
}
