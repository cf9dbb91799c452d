package org.benchtrail.core.method.identify;

import org.benchtrail.core.text.FieldChecks;

/** A stop-work lifted: what made the place workable again, by somebody who acknowledged the caution. */
public record StopWorkCleared(String how, boolean acknowledged) implements IdentifyFact {
    public StopWorkCleared {
        FieldChecks t = new FieldChecks();
        how = t.required("how", how, FieldChecks.PARAGRAPH, "Say what was done about the hazard.");
        t.require(acknowledged, "acknowledged", "Read the caution and tick that you have.");
        t.done();
    }
}
