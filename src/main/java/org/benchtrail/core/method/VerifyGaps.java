package org.benchtrail.core.method;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.ReadingVerdict;
import org.benchtrail.core.method.identify.Reproduction;
import org.benchtrail.core.method.identify.ReproductionTried;
import org.benchtrail.core.method.identify.SoakTimeReckoned;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.verify.FunctionChecked;
import org.benchtrail.core.method.verify.ItemState;
import org.benchtrail.core.method.verify.PreventionConsidered;
import org.benchtrail.core.method.verify.RequesterAnswered;
import org.benchtrail.core.method.verify.RequesterState;
import org.benchtrail.core.method.verify.SoakRun;
import org.benchtrail.core.method.verify.SymptomRechecked;

/** What verify lacks. Only what was done after the last action counts. */
final class VerifyGaps {
    private VerifyGaps() {}

    static String symptoms(Situation s) {
        List<StandingFact<SymptomRecorded>> symptoms = s.sheet().all(SymptomRecorded.class);
        List<String> open = symptoms.stream()
                .filter(symptom -> !gone(s.sheet(), symptom))
                .map(symptom -> symptom.fact().observable())
                .toList();
        if (symptoms.isEmpty()) {
            return "There is no symptom left to look for: record the one that was reported.";
        }
        return open.isEmpty()
                ? ""
                : "Look for every symptom again, after the last action: " + String.join("; ", open)
                        + ". If one persists, report that.";
    }

    private static boolean gone(JobSheet sheet, StandingFact<SymptomRecorded> symptom) {
        int since = Math.max(sheet.lastWork(), symptom.settledSince());
        return sheet.latest(SymptomRechecked.class, r -> r.fact().symptom() == symptom.entry())
                .filter(r -> r.entry() > since && r.fact().gone())
                .isPresent();
    }

    static String readings(Situation s) {
        List<StandingFact<ReadingRecorded>> open = outstanding(s.sheet());
        if (open.isEmpty()) {
            return "";
        }
        List<String> names = open.stream()
                .map(r -> r.fact().quantity() + ", " + r.fact().point())
                .toList();
        return "Measure again, after the last action, what was outside its limit: " + String.join("; ", names) + ".";
    }

    /** The latest reading of every quantity-at-a-point that was once outside and is not proven back within. */
    static List<StandingFact<ReadingRecorded>> outstanding(JobSheet sheet) {
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

    static String function(Situation s) {
        Category category = s.sheet().opened().category();
        Map<Integer, ItemState> answers = s.sheet()
                .latest(FunctionChecked.class)
                .filter(f -> f.entry() > s.sheet().lastWork()
                        && f.entry() > s.sheet().categorySince())
                .map(f -> f.fact().items())
                .orElse(Map.of());
        if (answers.containsValue(ItemState.FAULTY)) {
            return "A function is faulty: report that, or put it right and check again.";
        }
        for (int item = 0; item < category.functions().size(); item++) {
            if (!answers.containsKey(item)) {
                return "Go through the whole checklist of functions after the last action: each works or does not apply.";
            }
        }
        return "";
    }

    static String requester(Situation s) {
        var answer = s.sheet()
                .latest(RequesterAnswered.class)
                .filter(a -> a.entry() > s.sheet().lastWork());
        if (answer.isEmpty()) {
            return "Ask the requester whether it is solved; say how often you tried, or that there is no user.";
        }
        return answer.get().fact().state() == RequesterState.DISAGREES
                ? "The requester does not agree: report what persists."
                : "";
    }

    static String prevention(Situation s) {
        return s.sheet().latestOfRound(PreventionConsidered.class).isPresent()
                ? ""
                : "Name what keeps it from coming back, or say why nothing applies.";
    }

    static String soak(Situation s) {
        if (!intermittent(s.sheet())) {
            return "";
        }
        List<StandingFact<SoakRun>> runs =
                s.sheet().all(SoakRun.class, r -> r.entry() > s.sheet().lastWork());
        if (runs.stream().anyMatch(r -> r.fact().recurred())) {
            return "It came back during the soak time: report that it persists.";
        }
        long minutes = runs.stream().mapToLong(r -> r.fact().minutes()).sum();
        long needed = soakMinutes(s.sheet(), s.policy());
        return minutes >= needed
                ? ""
                : "The fault was intermittent: let it run " + needed / 60 + " h without recurring (so far "
                        + minutes / 60 + " h " + minutes % 60 + " min).";
    }

    /** The policy's time, or the calculated one if that is longer. */
    static long soakMinutes(JobSheet sheet, Policy policy) {
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
