package org.benchtrail.core.method.plan;

import org.benchtrail.core.text.Texts;

public record PlanDeclined(String reason) implements PlanFact {
    public PlanDeclined {
        Texts t = new Texts();
        reason = t.required("reason", reason, Texts.PARAGRAPH, "Say what must change before it can be approved.");
        t.done();
    }
}
