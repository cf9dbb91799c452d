package org.benchtrail.core.method.plan;

import java.util.List;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Part;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.text.FieldChecks;

public record PlanDeclined(@FreeText String reason) implements PlanFact {
    public PlanDeclined {
        FieldChecks t = new FieldChecks();
        reason = t.required("reason", reason, FieldChecks.PARAGRAPH, "Say what must change before it can be approved.");
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
    public String told(Telling reader) {
        return reason;
    }
}
