package org.benchtrail.core.method.plan;

import org.benchtrail.core.text.Texts;

/** A part that failed its fit check, let through by somebody else with a reason. */
public record PartOverrideApproved(int action, String reason) implements PlanFact {
    public PartOverrideApproved {
        Texts t = new Texts();
        reason = t.required("reason", reason, Texts.PARAGRAPH, "Say why the part may be used all the same.");
        t.done();
    }
}
