package org.benchtrail.core.method.identify;

import org.benchtrail.core.text.Texts;

/** Something observed that bears on causes. A drive-failure finding puts data first from that moment on. */
public record FindingRecorded(String text, boolean driveFailure) implements EvidenceFact {
    public FindingRecorded {
        Texts t = new Texts();
        text = t.required("text", text, Texts.PARAGRAPH, "Say what was found.");
        t.done();
    }
}
