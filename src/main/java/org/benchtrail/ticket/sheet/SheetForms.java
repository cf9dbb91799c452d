package org.benchtrail.ticket.sheet;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Step;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.ticket.Viewing;
import org.benchtrail.ticket.desk.DeskForms;
import org.benchtrail.ticket.document.DocumentForms;
import org.benchtrail.ticket.entry.CorrectionForms;
import org.benchtrail.ticket.form.FormContext;
import org.benchtrail.ticket.form.SheetForm;
import org.benchtrail.ticket.identify.EvidenceForm;
import org.benchtrail.ticket.identify.IdentifyForm;
import org.benchtrail.ticket.plan.PlanForms;
import org.benchtrail.ticket.test.TestForms;
import org.benchtrail.ticket.theorize.FindingsForm;
import org.benchtrail.ticket.theorize.TheorizeForm;
import org.benchtrail.ticket.verify.VerifyForms;

/** Every form that can be sent to a job sheet. */
public final class SheetForms {
    /** Those that only one step has. */
    private static final Map<Step, List<SheetForm>> OF_STEP = Map.of(
            Step.THEORIZE, List.of(TheorizeForm.FORM),
            Step.TEST, TestForms.ALL,
            Step.PLAN, PlanForms.ALL,
            Step.VERIFY, VerifyForms.ALL,
            Step.DOCUMENT, DocumentForms.ALL);

    /** Those that stand on the page at every step. */
    private static final List<SheetForm> ALWAYS = Stream.of(
                    List.of(IdentifyForm.FORM, EvidenceForm.FORM, FindingsForm.FORM),
                    DeskForms.ALL,
                    CorrectionForms.ALL)
            .flatMap(List::stream)
            .toList();

    public static final List<SheetForm> ALL = Stream.concat(
                    ALWAYS.stream(), Stream.of(Step.values()).flatMap(step -> of(step).stream()))
            .toList();

    private SheetForms() {}

    /** Those that only that step has. */
    static List<SheetForm> of(Step step) {
        return OF_STEP.getOrDefault(step, List.of());
    }

    /** The names of the forms that the page has when the ticket stands there. */
    static Set<String> at(Step step) {
        return Stream.concat(ALWAYS.stream(), of(step).stream())
                .map(SheetForm::name)
                .collect(Collectors.toSet());
    }

    /**
     * What stands before the ids of a form's fields where it stands beside the step, whose form may have the same fields; the
     * assignee has all of them in the form of Identify.
     */
    public static String prefix(String form, Viewing viewing) {
        boolean beside = viewing.sheet().step() != Step.IDENTIFY || !viewing.isViewersOwn();
        return beside && Set.of("evidence", "identify").contains(form) ? "add-" : "";
    }

    public static Optional<SheetForm> find(String name) {
        return ALL.stream().filter(form -> form.name().equals(name)).findFirst();
    }

    /** What the fields hold before anybody types: what the sheet says. */
    public static FormValues values(JobSheet sheet, FormContext context) {
        FormValues values = new FormValues();
        ALL.forEach(form -> form.show(sheet, context, values));
        return values;
    }
}
