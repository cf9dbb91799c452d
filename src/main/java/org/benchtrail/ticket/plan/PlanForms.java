package org.benchtrail.ticket.plan;

import static org.benchtrail.ticket.form.DrawnForm.field;
import static org.benchtrail.ticket.form.DrawnForm.paragraph;
import static org.benchtrail.ticket.form.FieldGroup.eitherLine;
import static org.benchtrail.ticket.form.FieldGroup.given;
import static org.benchtrail.ticket.form.FieldGroup.ofEach;
import static org.benchtrail.ticket.form.FieldGroup.required;
import static org.benchtrail.ticket.form.FieldGroup.special;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import org.benchtrail.core.advice.SheetEvidence;
import org.benchtrail.core.diagnosis.Cause;
import org.benchtrail.core.diagnosis.Danger;
import org.benchtrail.core.diagnosis.Repair;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.desk.Rethought;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.plan.ActionPlanned;
import org.benchtrail.core.method.plan.ActionSettled;
import org.benchtrail.core.method.plan.MakerConsulted;
import org.benchtrail.core.method.plan.PartFitChecked;
import org.benchtrail.core.method.plan.PartOverrideApproved;
import org.benchtrail.core.method.plan.PlanApproved;
import org.benchtrail.core.method.plan.PlanDeclined;
import org.benchtrail.ticket.form.FormContext;
import org.benchtrail.ticket.form.Posting;
import org.benchtrail.ticket.form.SheetForm;
import org.benchtrail.ticket.identify.EvidenceForm;
import org.benchtrail.ticket.identify.IdentifyForm;

/** The plan, its approval by somebody else, and carrying it out. */
public final class PlanForms {
    private static final SheetForm PLAN = SheetForm.of(
                    "plan", given("action", ActionPlanned.class).offering(PlanForms::usualRepair))
            .with(eitherLine(
                    "maker",
                    MakerConsulted.class,
                    "applicable",
                    MakerConsulted::applicable,
                    sheet -> sheet.inForce(MakerConsulted.class).map(StandingFact::fact)))
            .with(
                    ofEach("fit", PartFitChecked.class, "fit", JobSheet::actions, PlanForms::action),
                    special("fit", PartFitChecked.class, PlanForms::fitOfNewAction),
                    IdentifyForm.DATA_NOW,
                    IdentifyForm.LOSS);

    private static final SheetForm APPROVE = SheetForm.of(
                    "approve",
                    special("approval", PlanApproved.class, PlanForms::approval),
                    required("decline", PlanDeclined.class).when(answered("decline")),
                    required("override", PartOverrideApproved.class).when(answered("override")))
            .fields("answer");

    private static final SheetForm CARRY_OUT = SheetForm.of(
                    "carry-out", special("settle", ActionSettled.class, PlanForms::settled))
            .with(EvidenceForm.GROUPS)
            .fields(EvidenceForm.LIMIT);

    private static final SheetForm RETHINK = SheetForm.of("rethink", required("rethink", Rethought.class))
            .drawn(
                    "The plan is wrong",
                    "back to the theories",
                    "Back to Theorize, next round",
                    paragraph("reason", "What carrying out the plan has shown"),
                    field("theoryWrong", "It shows that the theory is wrong"));

    public static final List<SheetForm> ALL = List.of(PLAN, APPROVE, CARRY_OUT, RETHINK);

    private PlanForms() {}

    /**
     * What the catalogue, the symptom and the report say of the first action. Of the questions about harm only a yes is offered: a
     * no is said by whoever plans.
     */
    private static Map<String, String> usualRepair(JobSheet sheet, FormContext context) {
        Optional<Cause> cause = context.category().flatMap(category -> SheetEvidence.causeUnderTest(category, sheet));
        if (!sheet.actions().isEmpty() || cause.isEmpty()) {
            return Map.of();
        }
        Repair repair = cause.get().repair();
        Map<String, String> offered = new HashMap<>();
        offered.put("what", repair.text());
        sheet.latest(SymptomRecorded.class)
                .ifPresent(symptom ->
                        offered.put("effect", "No longer: " + symptom.fact().observable()));
        offered.put(
                "impact",
                "%s, for about %d min"
                        .formatted(
                                sheet.opened().impact().words(),
                                Math.round(repair.minutes() + repair.verifyMinutes())));
        if (!repair.reversible()) {
            offered.put("irreversible", "true");
        }
        if (repair.dangers().contains(Danger.DATA) || repair.dangers().contains(Danger.DRIVE_MOVED)) {
            offered.put("touchesStorage", "true");
        }
        if (repair.partCost() > 0) {
            offered.put("usesPart", "true");
        }
        return offered;
    }

    private static Map<String, ?> action(StandingFact<ActionPlanned> action) {
        return Map.of("action", action.entry());
    }

    /** The part of the action that the same form plans has no entry yet. */
    private static void fitOfNewAction(Posting posting) {
        if (posting.form().has("fit.fit")
                && posting.form().given("action")
                && posting.form().has("action.part")) {
            posting.form()
                    .read("fit", PartFitChecked.class, Map.of("action", 0))
                    .ifPresent(
                            fit -> posting.add(sheet -> new PartFitChecked(lastAction(sheet), fit.fit(), fit.basis())));
        }
    }

    private static int lastAction(JobSheet sheet) {
        List<StandingFact<ActionPlanned>> actions = sheet.actions();
        return actions.get(actions.size() - 1).entry();
    }

    private static Predicate<Posting> answered(String answer) {
        return posting -> posting.form().text("answer").equals(answer);
    }

    private static void approval(Posting posting) {
        switch (posting.form().text("answer")) {
            case "approve" -> {
                List<Integer> actions = posting.sheet().actions().stream()
                        .map(StandingFact::entry)
                        .toList();
                posting.record("approval", PlanApproved.class, Map.of("actions", actions));
            }
            case "decline", "override" -> {} // each a group of its own
            default -> posting.form().refuse("answer", "Choose whether you approve the plan.");
        }
    }

    /** How each action ended. */
    private static void settled(Posting posting) {
        for (StandingFact<ActionPlanned> action : posting.sheet().actions()) {
            String group = "settle-" + action.entry();
            if (posting.form().has(group + ".settlement")) {
                posting.record(group, ActionSettled.class, action(action));
            }
        }
    }
}
