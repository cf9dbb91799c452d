package org.benchtrail.core.method.desk;

import org.benchtrail.core.method.Fact;
import org.benchtrail.core.text.FieldChecks;
import org.jspecify.annotations.Nullable;

/**
 * An earlier entry put right. The old one stays readable in the trail.
 *
 * @param entry number of the entry that is corrected
 * @param replacement what stands instead, of the same kind; null strikes it out
 */
public record Corrected(int entry, String reason, @Nullable Fact replacement) implements DeskFact {
    public Corrected {
        FieldChecks t = new FieldChecks();
        reason = t.required("reason", reason, FieldChecks.PARAGRAPH, "Say why it is corrected.");
        t.done();
    }
}
