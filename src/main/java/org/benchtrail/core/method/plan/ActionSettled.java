package org.benchtrail.core.method.plan;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.EnumCopies;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Gate;
import org.benchtrail.core.method.GuardedAct;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.method.desk.CautionsAcknowledged;
import org.benchtrail.core.text.FieldChecks;

public record ActionSettled(
        int action, Settlement settlement, @FreeText String note) implements PlanFact {
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
        StandingFact<ActionPlanned> planned = ActionPlanned.ofThisRound(s.sheet(), action);
        if (s.sheet().settlement(action).isPresent()) {
            throw new Invalid("action", "That action has been settled: plan another one.");
        }
        if (!changesDevice()) {
            return List.of();
        }
        List<Missing> missing = Gate.missing(s).stream()
                .filter(m -> !m.code().equals(PlanRequirement.ACTIONS_SETTLED.code()))
                .toList();
        return missing.isEmpty() ? untaken(CautionsAcknowledged.open(s, planned, Caution.toldBy(note))) : missing;
    }

    /** What the note says was done has its cautions too. */
    private static List<Missing> untaken(Set<Caution> open) {
        return open.isEmpty()
                ? List.of()
                : Missing.rule(
                        PlanRequirement.CAUTIONS_TAKEN.code(),
                        "Read and acknowledge the cautions before the action, as an act of its own: "
                                + CautionsAcknowledged.titles(open) + ".",
                        PlanRequirement.CAUTIONS_TAKEN.code());
    }

    @Override
    public Optional<GuardedAct> guardedAct(JobSheet sheet) {
        return changesDevice()
                ? sheet.latest(ActionPlanned.class, a -> a.entry() == action)
                        .map(a -> new GuardedAct(
                                action, EnumCopies.union(Caution.class, a.fact().cautions(), Caution.toldBy(note))))
                : Optional.empty();
    }

    /** One that failed was carried out too, as far as it went. */
    @Override
    public boolean changesDevice() {
        return settlement != Settlement.NOT_NEEDED;
    }

    @Override
    public String told(Telling reader) {
        return Told.noted("that of entry " + action + " " + settlement.words(), note);
    }
}
