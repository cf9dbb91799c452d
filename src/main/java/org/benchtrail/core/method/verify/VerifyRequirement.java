package org.benchtrail.core.method.verify;

import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.SymptomRecorded;

/** What verify asks for. Only what was done after the last action counts. */
public enum VerifyRequirement implements Requirement {
    SYMPTOMS_GONE(false, "Every symptom looked for again and gone", VerifyRequirement::symptoms),
    READINGS_BACK(true, "What was outside its limit is measured again and within", VerifyRequirement::readings),
    FUNCTION_CHECKED(true, "The full-function checklist complete", VerifyRequirement::function),
    REQUESTER_AGREES(true, "The requester agrees", VerifyRequirement::requester),
    PREVENTION_CONSIDERED(
            false,
            "A preventive measure, or why none applies",
            s -> s.unlessInRound(
                    PreventionConsidered.class, "Name what keeps it from coming back, or say why nothing applies.")),
    SOAK_TIME_PASSED(true, "An intermittent fault has run clean for the soak time", SoakTime::lacking);

    private final Row row;

    VerifyRequirement(boolean waivable, String title, Function<Situation, String> gap) {
        row = new Row(waivable, title, gap);
    }

    @Override
    public Step step() {
        return Step.VERIFY;
    }

    @Override
    public Row row() {
        return row;
    }

    private static String symptoms(Situation s) {
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

    private static String requester(Situation s) {
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
}
