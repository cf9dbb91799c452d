package org.benchtrail.core.method.identify;

import org.benchtrail.core.text.FieldChecks;

public record ReproductionTried(Reproduction outcome, String how) implements IdentifyFact {
    public ReproductionTried {
        FieldChecks t = new FieldChecks();
        t.require(outcome != null, "outcome", "Choose yes, no, intermittent or unsafe to try.");
        how = t.required("how", how, FieldChecks.PARAGRAPH, "Say how it was tried, or why it was not.");
        t.done();
    }
}
