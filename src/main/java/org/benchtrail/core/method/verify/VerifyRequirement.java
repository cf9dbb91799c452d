package org.benchtrail.core.method.verify;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.ReviewQuestion;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.identify.BenchResultAttached;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.SoakTimeReckoned;
import org.benchtrail.core.method.identify.SymptomRecorded;

/** What verify asks for. Only what was done after the last action counts. */
public enum VerifyRequirement implements Requirement {
    SYMPTOMS_GONE(
            false,
            "Symptoms",
            "Every symptom looked for again and gone",
            VerifyRequirement::symptoms,
            ReviewQuestion.major("Was the same symptom looked for in the same way?", SymptomRechecked.class)),
    READINGS_BACK(
            true,
            "Readings",
            "What was outside its limit is measured again and within",
            VerifyRequirement::readings,
            ReviewQuestion.major(
                    "Is the second reading of the same point, taken after the work?", ReadingRecorded.class)) {
        @Override
        public int waivableSince(JobSheet sheet) {
            return ReadingsBack.lastOutside(sheet);
        }

        @Override
        public String unasked(Situation s) {
            return ReadingsBack.lastOutside(s.sheet()) == 0 ? "No reading was outside its limit." : "";
        }
    },
    FUNCTION_CHECKED(
            true,
            "Full function",
            "The full-function checklist complete",
            VerifyRequirement::function,
            ReviewQuestion.major("Was the device used as its owner uses it?", FunctionChecked.class)) {
        @Override
        public int waivableSince(JobSheet sheet) {
            return sheet.latest(FunctionChecked.class).map(StandingFact::entry).orElse(0);
        }
    },
    REQUESTER_AGREES(
            true,
            "Requester",
            "The requester agrees",
            VerifyRequirement::requester,
            ReviewQuestion.minor("Was the requester really asked?", RequesterAnswered.class)) {
        @Override
        public int waivableSince(JobSheet sheet) {
            return sheet.latest(RequesterAnswered.class, VerifyRequirement::disagrees)
                    .map(StandingFact::entry)
                    .orElse(0);
        }
    },
    PREVENTION_CONSIDERED(
            false,
            "Prevention",
            "A preventive measure, or why none applies",
            s -> s.unlessInRound(
                    PreventionConsidered.class, "Name what keeps it from coming back, or say why nothing applies."),
            ReviewQuestion.minor(
                    "Would the measure prevent this cause, or is it rightly left?", PreventionConsidered.class)),
    SOAK_TIME_PASSED(
            true,
            "Soak time",
            "An intermittent fault has run clean for the soak time",
            SoakTime::lacking,
            ReviewQuestion.major(
                    "Did it run long enough, and as it ran when it failed?",
                    SoakStarted.class,
                    SoakRun.class,
                    SoakTimeReckoned.class,
                    BenchResultAttached.class)) {
        @Override
        public int waivableSince(JobSheet sheet) {
            return SoakTime.lastSign(sheet);
        }

        @Override
        public String unasked(Situation s) {
            return SoakTime.intermittent(s.sheet()) ? "" : "Nothing recorded says that the fault comes and goes.";
        }
    };

    private final Row row;

    VerifyRequirement(
            boolean waivable, String word, String title, Function<Situation, String> gap, ReviewQuestion review) {
        row = new Row(waivable, word, title, gap, review);
    }

    @Override
    public Step step() {
        return Step.VERIFY;
    }

    @Override
    public Row row() {
        return row;
    }

    /** All of it is asked again at close, with whatever was recorded since. */
    @Override
    public boolean bitesLater(JobSheet sheet) {
        return true;
    }

    private static String symptoms(Situation s) {
        List<StandingFact<SymptomRecorded>> symptoms = s.sheet().owed(SymptomRecorded.class);
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
                .filter(r -> r.isAfter(since) && r.fact().gone())
                .isPresent();
    }

    private static String readings(Situation s) {
        List<StandingFact<ReadingRecorded>> open = ReadingsBack.outstanding(s.sheet());
        if (open.isEmpty()) {
            return "";
        }
        List<String> names = open.stream()
                .map(r -> r.fact().quantity() + ", " + r.fact().point())
                .toList();
        return "Measure again, after the last action, what was outside its limit: " + String.join("; ", names) + ".";
    }

    private static String function(Situation s) {
        List<String> checklist = s.sheet().checkedAs().functions();
        Map<String, ItemState> answers = s.sheet()
                .latest(FunctionChecked.class)
                .filter(f ->
                        f.isAfter(s.sheet().lastWork()) && f.isAfter(s.sheet().categorySince()))
                .map(f -> f.fact().byText(checklist))
                .orElse(Map.of());
        if (answers.containsValue(ItemState.FAULTY)) {
            return "A function is faulty: report that, or put it right and check again.";
        }
        if (!answers.keySet().containsAll(checklist)) {
            return "Go through the whole checklist of functions after the last action: each works or does not apply.";
        }
        return answers.containsValue(ItemState.WORKS)
                ? ""
                : "Nothing of the checklist was seen working: at least one function has to be tried.";
    }

    private static String requester(Situation s) {
        var answer = s.sheet()
                .latest(RequesterAnswered.class)
                .filter(a -> a.isAfter(s.sheet().lastWork()));
        if (answer.isEmpty()) {
            return "Ask the requester whether it is solved; say how often you tried, or that there is no user.";
        }
        if (disagrees(answer.get())) {
            return "The requester does not agree: report what persists.";
        }
        boolean agreed = answer.get().fact().state() == RequesterState.AGREES;
        return agreed || !disagreed(s.sheet())
                ? ""
                : "The requester did not agree before: only that they agree now, or a waiver, answers that.";
    }

    private static boolean disagrees(StandingFact<RequesterAnswered> answer) {
        return answer.fact().state() == RequesterState.DISAGREES;
    }

    /** Whether the requester's last word, from whatever round, was that it is not solved. */
    private static boolean disagreed(JobSheet sheet) {
        return sheet.latest(
                        RequesterAnswered.class, a -> disagrees(a) || a.fact().state() == RequesterState.AGREES)
                .filter(VerifyRequirement::disagrees)
                .isPresent();
    }
}
