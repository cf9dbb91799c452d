package org.benchtrail.core.method.identify;

import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Lasts;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.text.FieldChecks;

public record EvidenceImpossible(@FreeText String reason) implements IdentifyFact {
    public EvidenceImpossible {
        FieldChecks t = new FieldChecks();
        reason = t.required("reason", reason, FieldChecks.PARAGRAPH, "Say why there is no reading, log or picture.");
        t.done();
    }

    @Override
    public boolean countsAsEvidence() {
        return true;
    }

    @Override
    public Lasts lasts() {
        return Lasts.UNTIL_REOPENED;
    }

    @Override
    public String told(Telling reader) {
        return reason;
    }
}
