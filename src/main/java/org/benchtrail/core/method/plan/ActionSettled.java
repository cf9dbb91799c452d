package org.benchtrail.core.method.plan;

import org.benchtrail.core.text.FieldChecks;

public record ActionSettled(int action, Settlement settlement, String note) implements PlanFact {
    public ActionSettled {
        FieldChecks t = new FieldChecks();
        t.require(settlement != null, "settlement", "Say whether it was carried out, failed, or is not needed.");
        note = t.optional("note", note, FieldChecks.PARAGRAPH);
        t.require(
                settlement == Settlement.CARRIED_OUT || !note.isEmpty(),
                "note",
                "Say what went wrong, or why it is not needed.");
        t.done();
    }
}
