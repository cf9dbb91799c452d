package org.benchtrail.ticket.plan;

import java.util.List;
import java.util.Set;
import org.benchtrail.core.advice.BenchFacts;
import org.benchtrail.core.bench.Bench;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.EnumCopies;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Method;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.desk.CautionsAcknowledged;
import org.benchtrail.core.method.plan.ActionPlanned;
import org.benchtrail.core.method.plan.ActionSettled;
import org.benchtrail.core.method.plan.PartFitChecked;
import org.benchtrail.core.method.plan.PlanApproved;
import org.benchtrail.core.method.plan.PlanDeclined;
import org.benchtrail.platform.Option;
import org.benchtrail.ticket.PresenceNote;
import org.benchtrail.ticket.Viewing;
import org.benchtrail.ticket.theorize.NextView;
import org.benchtrail.ticket.theorize.RankingView;
import org.jspecify.annotations.Nullable;

/**
 * The actions of this round, and who has to approve them.
 *
 * @param toDo the actions that are not settled
 * @param toTake the cautions of all of them that are not acknowledged yet, each once
 * @param approvalReasons why somebody else has to approve; none if nobody has to
 * @param approval what was said to it; empty if nothing was
 * @param partChecks the calculations that say whether a part fits
 * @param usualRepair null if the catalogue has none for the active theory
 */
public record PlanView(
        List<PlannedAction> actions,
        List<PlannedAction> toDo,
        List<Caution> toTake,
        List<String> approvalReasons,
        String approval,
        List<Option> partChecks,
        NextView.@Nullable UsualRepair usualRepair) {

    /**
     * An action.
     *
     * @param toTake the cautions that are not acknowledged yet
     * @param taken the others, by their titles
     * @param fit whether its part fits; empty if that was not checked
     * @param outcome how it ended; empty while it is to be done
     * @param presence what is told of a mentor's presence; null where none is needed
     */
    public record PlannedAction(
            int entry,
            ActionPlanned plan,
            Set<Caution> toTake,
            String taken,
            String fit,
            String outcome,
            @Nullable PresenceNote presence) {

        public boolean isReady() {
            return toTake.isEmpty();
        }

        public boolean isSettled() {
            return !outcome.isEmpty();
        }
    }

    public static PlanView of(Viewing viewing, @Nullable RankingView ranking) {
        JobSheet sheet = viewing.sheet();
        List<PlannedAction> actions =
                sheet.actions().stream().map(a -> action(a, viewing)).toList();
        List<PlannedAction> toDo = actions.stream().filter(a -> !a.isSettled()).toList();
        return new PlanView(
                actions,
                toDo,
                toDo.stream()
                        .flatMap(a -> a.toTake().stream())
                        .distinct()
                        .sorted()
                        .toList(),
                Method.approvalReasons(sheet, viewing.policy()),
                approved(viewing) + declined(viewing),
                benchPartChecks(),
                ranking == null ? null : ranking.advised().usualRepair());
    }

    private static PlannedAction action(StandingFact<ActionPlanned> action, Viewing viewing) {
        JobSheet sheet = viewing.sheet();
        ActionPlanned plan = action.fact();
        Set<Caution> open = CautionsAcknowledged.open(sheet, action, plan.cautions());
        String fit = sheet.latest(PartFitChecked.class, f -> f.fact().action() == action.entry())
                .map(f -> f.fact().fit().words() + ": " + f.fact().basis())
                .orElse("");
        return new PlannedAction(
                action.entry(),
                plan,
                open,
                CautionsAcknowledged.titles(EnumCopies.less(Caution.class, plan.cautions(), open)),
                fit,
                sheet.settlement(action.entry()).map(PlanView::outcome).orElse(""),
                PresenceNote.of(viewing, action.entry(), plan.cautions()));
    }

    private static String outcome(StandingFact<ActionSettled> settled) {
        return settled.fact().settlement().words() + after(": ", settled.fact().note());
    }

    private static String approved(Viewing viewing) {
        return viewing.sheet()
                .latestOfRound(PlanApproved.class)
                .map(a ->
                        "Approved by " + viewing.stamp(a) + after(": ", a.fact().note()))
                .orElse("");
    }

    private static String declined(Viewing viewing) {
        return viewing.sheet()
                .latestOfRound(PlanDeclined.class)
                .map(d -> "Declined by " + viewing.stamp(d) + ": " + d.fact().reason())
                .orElse("");
    }

    private static String after(String separator, String note) {
        return note.isEmpty() ? "" : separator + note;
    }

    private static List<Option> benchPartChecks() {
        return BenchFacts.PART_CHECKS.stream()
                .sorted()
                .flatMap(id -> Bench.find(id).stream())
                .map(c -> new Option(c.id(), c.title()))
                .toList();
    }
}
