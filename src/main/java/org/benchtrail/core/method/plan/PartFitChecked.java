package org.benchtrail.core.method.plan;

import java.util.List;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.text.FieldChecks;

/** A replacement part held against the place it goes to. */
public record PartFitChecked(int action, Fit fit, String basis) implements PlanFact {
    public PartFitChecked {
        FieldChecks t = new FieldChecks();
        t.require(fit != null, "fit", "Say whether the part fits.");
        basis = t.required("basis", basis, FieldChecks.PARAGRAPH, "Say what was compared: interface, size, rating.");
        t.done();
    }

    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        ActionPlanned.ofThisRound(s.sheet(), action);
        return List.of();
    }
}
