package org.benchtrail.core.method.plan;

import org.benchtrail.core.text.Texts;

public record ActionSettled(int action, Settlement settlement, String note) implements PlanFact {
    public ActionSettled {
        Texts t = new Texts();
        t.require(settlement != null, "settlement", "Say whether it was carried out, failed, or is not needed.");
        note = t.optional("note", note, Texts.PARAGRAPH);
        t.require(
                settlement == Settlement.CARRIED_OUT || !note.isEmpty(),
                "note",
                "Say what went wrong, or why it is not needed.");
        t.done();
    }
}
