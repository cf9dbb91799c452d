package org.benchtrail.core.method.verify;

import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;

/** What keeps it from coming back, or why nothing applies. */
public record PreventionConsidered(
        boolean applies, @FreeText String text) implements VerifyFact {
    public PreventionConsidered {
        FieldChecks t = new FieldChecks();
        text = t.required("text", text, FieldChecks.PARAGRAPH, "Name the measure, or say why none applies.");
        t.done();
    }

    @Override
    public String told(Telling reader) {
        return Told.noted(applies ? "there is some" : "none is needed", text);
    }
}
