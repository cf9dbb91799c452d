package org.benchtrail.core.method.identify;

import org.benchtrail.core.text.Texts;

public record EvidenceImpossible(String reason) implements IdentifyFact {
    public EvidenceImpossible {
        Texts t = new Texts();
        reason = t.required("reason", reason, Texts.PARAGRAPH, "Say why there is no reading, log or picture.");
        t.done();
    }

    @Override
    public boolean isEvidence() {
        return true;
    }
}
