package org.benchtrail.core.method.verify;

import org.benchtrail.core.text.FieldChecks;

/** A run under observation after the last action, in minutes. */
public record SoakRun(int minutes, boolean recurred, String note) implements VerifyFact {
    public SoakRun {
        FieldChecks t = new FieldChecks();
        t.require(minutes >= 1 && minutes <= 525_600, "minutes", "Give the run in minutes, 1 to 525600 (a year).");
        note = t.optional("note", note, FieldChecks.PARAGRAPH);
        t.done();
    }
}
