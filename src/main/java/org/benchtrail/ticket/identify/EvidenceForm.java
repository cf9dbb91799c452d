package org.benchtrail.ticket.identify;

import java.util.List;
import org.benchtrail.core.method.identify.ExtractRecorded;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.ticket.form.FieldGroup;
import org.benchtrail.ticket.form.SheetForm;

/** Evidence, which can be added at any step: by a form of its own, and beside the questions of a step. */
public final class EvidenceForm {
    private static final FieldGroup<ReadingRecorded> READING = FieldGroup.given(
                    "reading", ReadingRecorded.class, ReadingDefaults::of)
            .ifFilled("value", "quantity");

    public static final List<FieldGroup<?>> GROUPS = List.of(
            READING,
            FieldGroup.given("extract", ExtractRecorded.class),
            FieldGroup.given("finding", FindingRecorded.class),
            FieldGroup.given("moresymptom", SymptomRecorded.class));

    /** The limit that was picked for a reading. */
    public static final String LIMIT = "limit.id";

    public static final SheetForm FORM = SheetForm.of("evidence").with(GROUPS).fields(LIMIT);

    private EvidenceForm() {}
}
