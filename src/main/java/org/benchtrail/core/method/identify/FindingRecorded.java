package org.benchtrail.core.method.identify;

import org.benchtrail.core.text.FieldChecks;

/** Something observed that bears on causes. A drive-failure finding puts data first from that moment on. */
public record FindingRecorded(String text, boolean driveFailure) implements EvidenceFact {
    public FindingRecorded {
        FieldChecks t = new FieldChecks();
        text = t.required("text", text, FieldChecks.PARAGRAPH, "Say what was found.");
        t.done();
    }
}
