package org.benchtrail.core.method.plan;

import java.util.List;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Part;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;

/** The plan as it stands, approved by somebody else; the actions are those listed by entry number. */
public record PlanApproved(List<Integer> actions, @FreeText String note) implements PlanFact {
    public PlanApproved {
        FieldChecks t = new FieldChecks();
        actions = actions == null ? List.of() : List.copyOf(actions);
        note = t.optional("note", note, FieldChecks.PARAGRAPH);
        t.require(!actions.isEmpty(), "actions", "Name the actions that are approved.");
        t.done();
    }

    @Override
    public Part takesPart() {
        return Part.JUDGING;
    }

    @Override
    public List<Missing> refusedTo(Actor actor, Situation s) {
        return Approval.refusedTo(actor, s, true);
    }

    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        actions.forEach(action -> ActionPlanned.ofThisRound(s.sheet(), action));
        return List.of();
    }

    @Override
    public String told(Telling reader) {
        return Told.noted("entries " + Told.list(actions, String::valueOf), note);
    }
}
