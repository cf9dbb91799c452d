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

/** A part that failed its fit check, let through by somebody else with a reason. */
public record PartOverrideApproved(int action, @FreeText String reason) implements PlanFact {
    public PartOverrideApproved {
        FieldChecks t = new FieldChecks();
        reason = t.required("reason", reason, FieldChecks.PARAGRAPH, "Say why the part may be used all the same.");
        t.done();
    }

    @Override
    public Part takesPart() {
        return Part.JUDGING;
    }

    @Override
    public List<Missing> refusedTo(Actor actor, Situation s) {
        return Approval.refusedTo(actor, s, false);
    }

    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        ActionPlanned.ofThisRound(s.sheet(), action);
        return List.of();
    }

    @Override
    public String told(Telling reader) {
        return Told.noted("for entry " + action, reason);
    }
}
