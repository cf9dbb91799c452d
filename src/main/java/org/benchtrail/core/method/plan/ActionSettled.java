package org.benchtrail.core.method.plan;

import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Gate;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Situation;
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

    /** An action is settled once, and carried out only when all else that the plan asks for is there. */
    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        ActionPlanned.ofThisRound(s.sheet(), action);
        if (s.sheet().settlement(action).isPresent()) {
            throw new Invalid("action", "That action has been settled: plan another one.");
        }
        return changesDevice()
                ? Gate.missing(s).stream()
                        .filter(m -> !m.code().equals(PlanRequirement.ACTIONS_SETTLED.code()))
                        .toList()
                : List.of();
    }

    /** One that failed was carried out too, as far as it went. */
    @Override
    public boolean changesDevice() {
        return settlement != Settlement.NOT_NEEDED;
    }
}
