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
    public static final List<SheetForm> ALL = Stream.of(
                    List.of(IdentifyForm.FORM, EvidenceForm.FORM, FindingsForm.FORM, TheorizeForm.FORM),
                    TestForms.ALL,
                    PlanForms.ALL,
                    VerifyForms.ALL,
                    DocumentForms.ALL,
                    DeskForms.ALL,
                    CorrectionForms.ALL)
            .flatMap(List::stream)
            .toList();

    private SheetForms() {}

    /** Forms that only one step has; all others stand on the page at every step. */
    private static final Map<Step, Set<String>> OF_STEP = Map.of(
            Step.THEORIZE, Set.of("theorize"),
            Step.TEST, Set.of("check", "result"),
            Step.PLAN, Set.of("plan", "approve", "carry-out", "rethink"),
            Step.VERIFY, Set.of("verify", "persists"),
            Step.DOCUMENT, Set.of("document", "mentor"));

    /** The names of the forms that the page has when the ticket stands there. */
    static Set<String> at(Step step) {
        return ALL.stream()
                .map(SheetForm::name)
                .filter(name -> OF_STEP.entrySet().stream()
                        .noneMatch(of -> of.getKey() != step && of.getValue().contains(name)))
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
