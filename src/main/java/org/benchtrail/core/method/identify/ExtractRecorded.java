package org.benchtrail.core.method.identify;

import org.benchtrail.core.method.Correctable;
import org.benchtrail.core.text.Texts;

/** A stretch of a log or of what the device said, with where it comes from. */
public record ExtractRecorded(String source, String text) implements EvidenceFact {
    public ExtractRecorded {
        Texts t = new Texts();
        source = t.required("source", source, Texts.LINE, "Name the log or screen that this comes from.");
        text = t.required("text", text, 20_000, "Paste the lines that matter.");
        t.done();
    }

    @Override
    public boolean isEvidence() {
        return true;
    }

    @Override
    public Correctable correctable() {
        return Correctable.REPLACED;
    }
}
