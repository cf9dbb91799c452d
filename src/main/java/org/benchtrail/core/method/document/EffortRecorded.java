package org.benchtrail.core.method.document;

import org.benchtrail.core.method.Correctable;
import org.benchtrail.core.text.Texts;

public record EffortRecorded(int minutes, String parts) implements DocumentFact {
    public EffortRecorded {
        Texts t = new Texts();
        t.require(minutes >= 1 && minutes <= 100_000, "minutes", "Give the time spent in minutes, 1 to 100000.");
        parts = t.optional("parts", parts, Texts.PARAGRAPH);
        t.done();
    }

    @Override
    public Correctable correctable() {
        return Correctable.REPLACED;
    }
}
