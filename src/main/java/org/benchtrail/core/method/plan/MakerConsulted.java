package org.benchtrail.core.method.plan;

import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;

/** The maker's instructions: the reference, or why there are none for this. */
public record MakerConsulted(boolean applicable, @FreeText String text) implements PlanFact {
    public MakerConsulted {
        FieldChecks t = new FieldChecks();
        text = t.required(
                "text",
                text,
                FieldChecks.PARAGRAPH,
                "Name the maker's instructions that were read, or why none apply.");
        t.done();
    }

    @Override
    public boolean lateAllowed() {
        return true;
    }

    @Override
    public String told(Telling reader) {
        return Told.noted(applicable ? "what the maker says" : "the maker says nothing on it", text);
    }
}
