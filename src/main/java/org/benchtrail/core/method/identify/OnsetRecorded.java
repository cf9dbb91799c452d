package org.benchtrail.core.method.identify;

import org.benchtrail.core.text.FieldChecks;

/** When it began or last worked; {@code known} false says outright that nobody knows. */
public record OnsetRecorded(boolean known, String when) implements IdentifyFact {
    public OnsetRecorded {
        FieldChecks t = new FieldChecks();
        when = t.optional("when", when, FieldChecks.LINE);
        t.require(!known || !when.isEmpty(), "when", "Say when it began or last worked, or choose 'unknown'.");
        t.done();
    }
}
