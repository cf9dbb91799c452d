package org.benchtrail.core.method.document;

import org.benchtrail.core.method.Correctable;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;

public record EffortRecorded(int minutes, @FreeText String parts) implements DocumentFact {
    public EffortRecorded {
        FieldChecks t = new FieldChecks();
        t.require(minutes >= 1 && minutes <= 100_000, "minutes", "Give the time spent in minutes, 1 to 100000.");
        parts = t.optional("parts", parts, FieldChecks.PARAGRAPH);
        t.done();
    }

    @Override
    public Correctable correctable() {
        return Correctable.REPLACED;
    }

    @Override
    public String told(Telling reader) {
        return Told.noted(minutes + " min", parts);
    }
}
