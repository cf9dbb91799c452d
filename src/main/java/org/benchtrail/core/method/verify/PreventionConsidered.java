package org.benchtrail.core.method.verify;

import org.benchtrail.core.text.Texts;

/** What keeps it from coming back, or why nothing applies. */
public record PreventionConsidered(boolean applies, String text) implements VerifyFact {
    public PreventionConsidered {
        Texts t = new Texts();
        text = t.required("text", text, Texts.PARAGRAPH, "Name the measure, or say why none applies.");
        t.done();
    }

    @Override
    public boolean lateAllowed() {
        return true;
    }
}
