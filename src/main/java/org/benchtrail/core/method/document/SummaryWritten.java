package org.benchtrail.core.method.document;

import java.util.List;
import org.benchtrail.core.text.Texts;

public record SummaryWritten(String findings, String actions, String outcome) implements DocumentFact {
    public SummaryWritten {
        Texts t = new Texts();
        findings = t.required("findings", findings, Texts.PARAGRAPH, "Sum up what was found.");
        actions = t.required("actions", actions, Texts.PARAGRAPH, "Sum up what was done.");
        outcome = t.required("outcome", outcome, Texts.PARAGRAPH, "Say how it stands now.");
        t.done();
    }

    @Override
    public List<String> story() {
        return List.of(findings, actions, outcome);
    }
}
