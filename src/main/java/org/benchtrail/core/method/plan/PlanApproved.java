package org.benchtrail.core.method.plan;

import java.util.List;
import org.benchtrail.core.text.FieldChecks;

/** The plan as it stands, approved by somebody else; the actions are those listed by entry number. */
public record PlanApproved(List<Integer> actions, String note) implements PlanFact {
    public PlanApproved {
        FieldChecks t = new FieldChecks();
        actions = actions == null ? List.of() : List.copyOf(actions);
        note = t.optional("note", note, FieldChecks.PARAGRAPH);
        t.require(!actions.isEmpty(), "actions", "Name the actions that are approved.");
        t.done();
    }
}
