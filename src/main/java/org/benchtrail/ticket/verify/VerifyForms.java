package org.benchtrail.ticket.verify;

import static org.benchtrail.ticket.form.DrawnForm.paragraph;
import static org.benchtrail.ticket.form.FieldGroup.answer;
import static org.benchtrail.ticket.form.FieldGroup.eitherLine;
import static org.benchtrail.ticket.form.FieldGroup.given;
import static org.benchtrail.ticket.form.FieldGroup.ofEach;
import static org.benchtrail.ticket.form.FieldGroup.required;
import static org.benchtrail.ticket.form.FieldGroup.special;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Method;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.desk.VerifyFailed;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.Reproduction;
import org.benchtrail.core.method.identify.ReproductionTried;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.verify.FunctionChecked;
import org.benchtrail.core.method.verify.PreventionConsidered;
import org.benchtrail.core.method.verify.RequesterAnswered;
import org.benchtrail.core.method.verify.SoakRun;
import org.benchtrail.core.method.verify.SoakStarted;
import org.benchtrail.core.method.verify.SymptomRechecked;
import org.benchtrail.ticket.form.Posting;
import org.benchtrail.ticket.form.SheetForm;
import org.benchtrail.ticket.identify.EvidenceForm;

/** What was wrong looked at again; or that it persists. */
public final class VerifyForms {
    private static final SheetForm VERIFY = SheetForm.of(
                    "verify",
                    ofEach(
                                    "recheck",
                                    SymptomRechecked.class,
                                    "gone",
                                    VerifyForms::owedSymptoms,
                                    symptom -> Map.of("symptom", symptom.entry()))
                            .showingEach(VerifyForms::asItWasReproduced),
                    ofEach("again", ReadingRecorded.class, "value", Method::readingsToRepeat, VerifyForms::sameLimit),
                    special("function", FunctionChecked.class, VerifyForms::function)
                            .when(posting -> posting.form().given("function"))
                            .showing(VerifyForms::answersByPlace),
                    answer("requester", RequesterAnswered.class).ifFilled("state"),
                    special("soakStart", SoakStarted.class, posting -> posting.add(new SoakStarted("")))
                            .when(posting -> posting.form().has("soakStart")),
                    given("soak", SoakRun.class))
            .with(eitherLine(
                    "prevention",
                    PreventionConsidered.class,
                    "applies",
                    PreventionConsidered::applies,
                    sheet -> sheet.latest(PreventionConsidered.class).map(StandingFact::fact)))
            .with(EvidenceForm.GROUPS)
            .fields(EvidenceForm.LIMIT, "soakStart");

    private static final SheetForm PERSISTS = SheetForm.of("persists", required("persists", VerifyFailed.class))
            .drawn(
                    "Not solved",
                    "it is still there, or something new appeared",
                    "Back to Theorize, next round",
                    paragraph("reason", "What is still there, or appeared"));

    public static final List<SheetForm> ALL = List.of(VERIFY, PERSISTS);

    private VerifyForms() {}

    /** Each symptom once, also where it was put right or struck out and is still owed. */
    static List<StandingFact<SymptomRecorded>> owedSymptoms(JobSheet sheet) {
        Map<Integer, StandingFact<SymptomRecorded>> byEntry = new LinkedHashMap<>();
        sheet.owed(SymptomRecorded.class).forEach(symptom -> byEntry.put(symptom.entry(), symptom));
        return List.copyOf(byEntry.values());
    }

    /** A symptom is looked for again in the way in which it was made to show before. */
    private static Map<Integer, Map<String, String>> asItWasReproduced(JobSheet sheet) {
        return sheet.inForce(ReproductionTried.class)
                .map(StandingFact::fact)
                .filter(tried -> tried.outcome() == Reproduction.YES)
                .map(tried -> owedSymptoms(sheet).stream()
                        .collect(Collectors.toMap(StandingFact::entry, symptom -> Map.of("how", tried.how()))))
                .orElse(Map.of());
    }

    /** On the page an item of the checklist is a place in it; on the record it is its text. */
    private static void function(Posting posting) {
        List<String> checklist = posting.sheet().checkedAs().functions();
        Map<String, String> answers = new LinkedHashMap<>();
        for (int place = 0; place < checklist.size(); place++) {
            String answer = posting.form().text("function.answers." + place);
            if (!answer.isEmpty()) {
                answers.put(checklist.get(place), answer);
            }
        }
        posting.form()
                .read("function", FunctionChecked.class, Map.of("answers", answers))
                .filter(checked -> posting.sheet()
                        .inForce(FunctionChecked.class)
                        .filter(last -> last.fact().equals(checked))
                        .isEmpty())
                .ifPresent(posting::add);
    }

    private static Optional<Map<String, Object>> answersByPlace(JobSheet sheet) {
        List<String> checklist = sheet.checkedAs().functions();
        return sheet.inForce(FunctionChecked.class).map(checked -> {
            Map<String, Object> places = new LinkedHashMap<>();
            checked.fact().byText(checklist).forEach((text, state) -> {
                if (checklist.contains(text)) {
                    places.put(Integer.toString(checklist.indexOf(text)), state);
                }
            });
            return Map.of("answers", places, "note", checked.fact().note());
        });
    }

    /** A repeated reading keeps quantity, point, unit and limit of the first one, so that the two can be compared. */
    private static Map<String, ?> sameLimit(StandingFact<ReadingRecorded> again) {
        ReadingRecorded first = again.fact();
        Map<String, String> known = new HashMap<>();
        known.put("quantity", first.quantity());
        known.put("unit", first.unit());
        known.put("point", first.point());
        known.put("lower", first.lower());
        known.put("upper", first.upper());
        known.put("limitSource", first.limitSource());
        if (first.accuracy() != null) {
            known.put("accuracy", first.accuracy());
        }
        if (first.finding() != null) {
            known.put("finding", first.finding());
        }
        return known;
    }
}
