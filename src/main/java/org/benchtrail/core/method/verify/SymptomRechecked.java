package org.benchtrail.core.method.verify;

import org.benchtrail.core.text.FieldChecks;

public record SymptomRechecked(int symptom, boolean gone, String how) implements VerifyFact {
    public SymptomRechecked {
        FieldChecks t = new FieldChecks();
        how = t.required("how", how, FieldChecks.PARAGRAPH, "Say how it was looked for.");
        t.done();
    }
}
