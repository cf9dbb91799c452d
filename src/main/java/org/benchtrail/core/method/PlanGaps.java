package org.benchtrail.core.method;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.core.method.desk.CautionsAcknowledged;
import org.benchtrail.core.method.identify.DataAnswered;
import org.benchtrail.core.method.plan.ActionPlanned;
import org.benchtrail.core.method.plan.ActionSettled;
import org.benchtrail.core.method.plan.Fit;
import org.benchtrail.core.method.plan.MakerConsulted;
import org.benchtrail.core.method.plan.PartFitChecked;
import org.benchtrail.core.method.plan.PartOverrideApproved;
import org.benchtrail.core.method.plan.PlanApproved;
import org.benchtrail.core.method.plan.PlanDeclined;
import org.benchtrail.core.method.plan.Settlement;

/** What plan lacks, and why a plan needs somebody else's approval. */
final class PlanGaps {
    private PlanGaps() {}

    static String planned(Situation s) {
        return s.sheet().actions().isEmpty()
                ? "Plan at least one action: what it does, who is down meanwhile, and the way back."
                : "";
    }

    static String maker(Situation s) {
        return s.sheet().latestOfRound(MakerConsulted.class).isPresent()
                ? ""
                : "Read the maker's instructions and name them, or say why none apply.";
    }

    static String parts(Situation s) {
        List<String> open = s.sheet().actions().stream()
                .filter(a -> a.fact().part() != null && !needless(s.sheet(), a) && !fits(s.sheet(), a))
                .map(a -> String.valueOf(a.fact().part()))
                .toList();
        return open.isEmpty()
                ? ""
                : "Check that the part fits its place, or have an override approved: " + String.join("; ", open) + ".";
    }

    private static boolean fits(JobSheet sheet, StandingFact<ActionPlanned> action) {
        boolean fits = sheet.latest(PartFitChecked.class, f -> f.fact().action() == action.entry())
                .filter(f -> f.entry() > action.settledSince())
                .filter(f -> f.fact().fit() != Fit.DOES_NOT_FIT)
                .isPresent();
        return fits
                || sheet.latest(PartOverrideApproved.class, o -> o.fact().action() == action.entry())
                        .filter(o -> o.entry() > action.settledSince())
                        .isPresent();
    }

    static String approved(Situation s) {
        List<String> reasons = approvalReasons(s.sheet(), s.policy());
        if (reasons.isEmpty() || approvalStands(s.sheet())) {
            return "";
        }
        String declined = s.sheet()
                .latestOfRound(PlanDeclined.class)
                .map(d -> " It was declined: " + d.fact().reason())
                .orElse("");
        return "Somebody else has to approve this plan first: " + String.join("; ", reasons) + "." + declined;
    }

    /** Why policy asks for approval; empty if it does not. */
    static List<String> approvalReasons(JobSheet sheet, Policy policy) {
        List<StandingFact<ActionPlanned>> actions =
                sheet.actions().stream().filter(a -> !needless(sheet, a)).toList();
        List<String> reasons = new ArrayList<>();
        addIf(reasons, actions.stream().anyMatch(a -> a.fact().irreversible()), "an action is irreversible");
        addIf(reasons, actions.stream().anyMatch(a -> a.fact().highRisk()), "an action is of high risk");
        addIf(
                reasons,
                actions.stream().anyMatch(a -> a.fact().severalDevices()),
                "an action reaches beyond the one device");
        BigDecimal cost = actions.stream().map(a -> a.fact().costAmount()).reduce(BigDecimal.ZERO, BigDecimal::add);
        addIf(
                reasons,
                cost.compareTo(policy.approvalCostLimit()) > 0,
                "it costs " + cost.toPlainString() + ", above the limit of "
                        + policy.approvalCostLimit().toPlainString());
        addIf(reasons, plannedByTrainee(actions), "the planner is a trainee");
        return reasons;
    }

    /** Whether the trainee's plan is the only reason for approval, so that a mentor may give it. */
    static boolean onlyForTrainee(JobSheet sheet, Policy policy) {
        return approvalReasons(sheet, policy).equals(List.of("the planner is a trainee"));
    }

    private static boolean plannedByTrainee(List<StandingFact<ActionPlanned>> actions) {
        return actions.stream()
                .map(a -> a.corrected() == null ? a.stamp() : a.corrected())
                .anyMatch(planned -> planned.roles().contains(Role.TRAINEE));
    }

    /** An approval covers the actions it names, as they were; a later change or a later refusal undoes it. */
    private static boolean approvalStands(JobSheet sheet) {
        var approval = sheet.latestOfRound(PlanApproved.class);
        if (approval.isEmpty()) {
            return false;
        }
        int given = approval.get().entry();
        boolean declinedSince = sheet.latestOfRound(PlanDeclined.class)
                .filter(d -> d.entry() > given)
                .isPresent();
        return !declinedSince
                && sheet.actions().stream()
                        .filter(a -> !needless(sheet, a))
                        .allMatch(a -> approval.get().fact().actions().contains(a.entry()) && a.settledSince() < given);
    }

    static String cautions(Situation s) {
        for (StandingFact<ActionPlanned> action : s.sheet().actions()) {
            int until = s.sheet()
                    .settlement(action.entry())
                    .map(StandingFact::entry)
                    .orElse(Integer.MAX_VALUE);
            Set<Caution> open = EnumSet.noneOf(Caution.class);
            open.addAll(action.fact().cautions());
            open.removeAll(acknowledged(s.sheet(), action, until));
            if (!open.isEmpty() && !needless(s.sheet(), action)) {
                return "Read and acknowledge the cautions before the first action: " + titles(open) + ".";
            }
        }
        return "";
    }

    private static String titles(Collection<Caution> cautions) {
        return cautions.stream().map(Caution::title).collect(Collectors.joining(", "));
    }

    /** Cautions acknowledged for that check or action, as it stands, before that entry. */
    static Set<Caution> acknowledged(JobSheet sheet, StandingFact<?> about, int before) {
        Set<Caution> taken = new HashSet<>();
        sheet.all(
                        CautionsAcknowledged.class,
                        a -> a.fact().about() == about.entry()
                                && a.entry() > about.settledSince()
                                && a.entry() < before)
                .forEach(a -> taken.addAll(a.fact().cautions()));
        return taken;
    }

    static String dataFresh(Situation s) {
        boolean fresh = s.sheet().actions().stream()
                .filter(a -> a.fact().touchesStorage() && !needless(s.sheet(), a))
                .map(a ->
                        s.sheet().settlement(a.entry()).map(n -> n.stamp().at()).orElse(s.now()))
                .allMatch(when -> dataFresh(s, when));
        return fresh
                ? ""
                : "An action touches storage and the answer about data is older than "
                        + s.policy().dataAnswerMaxAge().toHours() + " h: verify or take the backup again.";
    }

    private static boolean dataFresh(Situation s, Instant when) {
        return s.sheet()
                .latest(DataAnswered.class, d -> !d.stamp().at().isAfter(when))
                .filter(d -> Duration.between(d.stamp().at(), when)
                                .compareTo(s.policy().dataAnswerMaxAge())
                        <= 0)
                .isPresent();
    }

    static String settled(Situation s) {
        List<StandingFact<ActionPlanned>> actions = s.sheet().actions();
        boolean failed = actions.stream().anyMatch(a -> is(s.sheet(), a, Settlement.FAILED));
        if (failed) {
            return "An action failed: rethink, and go round again with what it showed.";
        }
        long open = actions.stream()
                .filter(a -> s.sheet().settlement(a.entry()).isEmpty())
                .count();
        if (open > 0) {
            return "Carry out every action, or mark it not needed: " + open + " still open.";
        }
        boolean none = actions.stream().noneMatch(a -> is(s.sheet(), a, Settlement.CARRIED_OUT));
        return none && !actions.isEmpty() ? "No action was carried out: nothing has changed yet." : "";
    }

    private static boolean needless(JobSheet sheet, StandingFact<ActionPlanned> action) {
        return is(sheet, action, Settlement.NOT_NEEDED);
    }

    private static boolean is(JobSheet sheet, StandingFact<ActionPlanned> action, Settlement settlement) {
        return sheet.settlement(action.entry())
                .map(StandingFact::fact)
                .map(ActionSettled::settlement)
                .filter(settlement::equals)
                .isPresent();
    }

    private static void addIf(List<String> list, boolean holds, String reason) {
        if (holds) {
            list.add(reason);
        }
    }
}
