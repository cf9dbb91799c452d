package org.benchtrail.core.method.plan;

import org.benchtrail.core.text.FieldChecks;

public record PlanDeclined(String reason) implements PlanFact {
    public PlanDeclined {
        FieldChecks t = new FieldChecks();
        reason = t.required("reason", reason, FieldChecks.PARAGRAPH, "Say what must change before it can be approved.");
        t.done();
    }
}
