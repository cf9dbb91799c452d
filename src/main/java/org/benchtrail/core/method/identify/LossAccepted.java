package org.benchtrail.core.method.identify;

import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;

/**
 * Where no backup is possible: whoever owns the data accepts that they may be lost.
 *
 * @param owner who owns the data
 * @param how how they said so, and when
 */
public record LossAccepted(@FreeText String owner, @FreeText String how) implements IdentifyFact {
    public LossAccepted {
        FieldChecks t = new FieldChecks();
        owner = t.required("owner", owner, FieldChecks.LINE, "Say who owns the data.");
        how = t.required("how", how, FieldChecks.PARAGRAPH, "Say how and when they accepted the loss.");
        t.done();
    }

    @Override
    public String told(Telling reader) {
        return Told.noted("by " + owner, how);
    }
}
