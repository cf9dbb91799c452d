package org.benchtrail.core.method.plan;

import java.util.List;
import org.benchtrail.core.text.Texts;

/** The plan as it stands, approved by somebody else; the actions are those listed by entry number. */
public record PlanApproved(List<Integer> actions, String note) implements PlanFact {
    public PlanApproved {
        Texts t = new Texts();
        actions = actions == null ? List.of() : List.copyOf(actions);
        note = t.optional("note", note, Texts.PARAGRAPH);
        t.require(!actions.isEmpty(), "actions", "Name the actions that are approved.");
        t.done();
    }
}
