package org.benchtrail.ticket.verify;

import static org.benchtrail.ticket.form.FieldGroup.answer;
import static org.benchtrail.ticket.form.FieldGroup.given;
import static org.benchtrail.ticket.form.FieldGroup.ofEach;
import static org.benchtrail.ticket.form.FieldGroup.required;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.desk.VerifyFailed;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.verify.FunctionChecked;
import org.benchtrail.core.method.verify.PreventionConsidered;
import org.benchtrail.core.method.verify.RequesterAnswered;
import org.benchtrail.core.method.verify.SoakRun;
import org.benchtrail.core.method.verify.SymptomRechecked;
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
                            sheet -> sheet.all(SymptomRecorded.class),
                            symptom -> Map.of("symptom", symptom.entry())),
                    ofEach(
                            "again",
                            ReadingRecorded.class,
                            "value",
                            sheet -> sheet.all(ReadingRecorded.class),
                            VerifyForms::sameLimit),
                    answer("function", FunctionChecked.class),
                    answer("requester", RequesterAnswered.class).ifFilled("state"),
                    answer("prevention", PreventionConsidered.class)
                            .showing(sheet ->
                                    sheet.latest(PreventionConsidered.class).map(StandingFact::fact)),
                    given("soak", SoakRun.class))
            .with(EvidenceForm.GROUPS)
            .fields(EvidenceForm.LIMIT);

    private static final SheetForm PERSISTS = SheetForm.of("persists", required("persists", VerifyFailed.class));

    public static final List<SheetForm> ALL = List.of(VERIFY, PERSISTS);

    private VerifyForms() {}

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
