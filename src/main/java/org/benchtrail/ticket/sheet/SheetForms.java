package org.benchtrail.ticket.sheet;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.ticket.desk.DeskForms;
import org.benchtrail.ticket.document.DocumentForms;
import org.benchtrail.ticket.entry.CorrectionForms;
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

    static Optional<SheetForm> find(String name) {
        return ALL.stream().filter(form -> form.name().equals(name)).findFirst();
    }

    /** What the fields hold before anybody types: what the sheet says. */
    static FormValues values(JobSheet sheet) {
        FormValues values = new FormValues();
        ALL.forEach(form -> form.show(sheet, values));
        return values;
    }
}
