package org.benchtrail.core.method.plan;

import org.benchtrail.core.text.FieldChecks;

/** A part that failed its fit check, let through by somebody else with a reason. */
public record PartOverrideApproved(int action, String reason) implements PlanFact {
    public PartOverrideApproved {
        FieldChecks t = new FieldChecks();
        reason = t.required("reason", reason, FieldChecks.PARAGRAPH, "Say why the part may be used all the same.");
        t.done();
    }
}
