package org.benchtrail.core.method.plan;

import java.util.List;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Later;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.ServerOnly;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;
import org.jspecify.annotations.Nullable;

/**
 * A replacement part held against the place it goes to.
 *
 * @param result entry number of the bench's result that says so; null if a person compared
 */
public record PartFitChecked(
        int action,
        Fit fit,
        @FreeText String basis,

        @Later @ServerOnly("The server names the result of the bench: attach it from there.") @Nullable
        Integer result)
        implements PlanFact {
    public PartFitChecked {
        FieldChecks t = new FieldChecks();
        t.require(fit != null, "fit", "Say whether the part fits.");
        basis = t.required("basis", basis, FieldChecks.PARAGRAPH, "Say what was compared: interface, size, rating.");
        t.done();
    }

    /** As a person compared it. */
    public PartFitChecked(int action, Fit fit, String basis) {
        this(action, fit, basis, null);
    }

    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        ActionPlanned.ofThisRound(s.sheet(), action);
        return List.of();
    }

    @Override
    public String told(Telling reader) {
        return Told.noted("the part of entry " + action + " " + fit.words(), basis);
    }
}
