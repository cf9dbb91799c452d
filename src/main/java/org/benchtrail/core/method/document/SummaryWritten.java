package org.benchtrail.core.method.document;

import java.util.List;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;

public record SummaryWritten(
        @FreeText String findings,
        @FreeText String actions,
        @FreeText String outcome) implements DocumentFact {
    public SummaryWritten {
        FieldChecks t = new FieldChecks();
        findings = t.required("findings", findings, FieldChecks.PARAGRAPH, "Sum up what was found.");
        actions = t.required("actions", actions, FieldChecks.PARAGRAPH, "Sum up what was done.");
        outcome = t.required("outcome", outcome, FieldChecks.PARAGRAPH, "Say how it stands now.");
        t.done();
    }

    @Override
    public List<String> story() {
        return List.of(findings, actions, outcome);
    }

    @Override
    public String told(Telling reader) {
        return Told.all(
                Told.labelled("found", findings),
                Told.labelled("done", actions),
                Told.labelled("how it ended", outcome));
    }
}
