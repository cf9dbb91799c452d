package org.benchtrail.core.method.identify;

import org.benchtrail.core.text.Texts;

public record ReproductionTried(Reproduction outcome, String how) implements IdentifyFact {
    public ReproductionTried {
        Texts t = new Texts();
        t.require(outcome != null, "outcome", "Choose yes, no, intermittent or unsafe to try.");
        how = t.required("how", how, Texts.PARAGRAPH, "Say how it was tried, or why it was not.");
        t.done();
    }
}
