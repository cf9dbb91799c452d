package org.benchtrail.core.method.plan;

import java.math.BigDecimal;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Policy;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.StandingFact;

/** Whether a plan needs somebody else's approval, who may give it, and whether it stands. */
public final class Approval {
    private Approval() {}

    /** Why policy asks for it. */
    public enum Reason {
        IRREVERSIBLE("an action is irreversible"),
        HIGH_RISK("an action is of high risk"),
        SEVERAL_DEVICES("an action reaches beyond the one device"),
        COST("it costs %s in all rounds together, above the limit of %s"),
        TRAINEE("the planner is a trainee");

        private final String words;

        Reason(String words) {
            this.words = words;
        }

        public String words(JobSheet sheet, Policy policy) {
            return String.format(
                    words,
                    cost(sheet).toPlainString(),
                    policy.approvalCostLimit().toPlainString());
        }
    }

    /** Empty if policy does not ask. */
    public static Set<Reason> reasons(JobSheet sheet, Policy policy) {
        List<StandingFact<ActionPlanned>> actions = needed(sheet);
        Set<Reason> reasons = EnumSet.noneOf(Reason.class);
        for (StandingFact<ActionPlanned> action : actions) {
            addIf(reasons, action.fact().irreversible(), Reason.IRREVERSIBLE);
            addIf(reasons, action.fact().highRisk(), Reason.HIGH_RISK);
            addIf(reasons, action.fact().severalDevices(), Reason.SEVERAL_DEVICES);
            addIf(reasons, isTrainees(action), Reason.TRAINEE);
        }
        addIf(reasons, !actions.isEmpty() && cost(sheet).compareTo(policy.approvalCostLimit()) > 0, Reason.COST);
        return reasons;
    }

    private static void addIf(Set<Reason> reasons, boolean holds, Reason reason) {
        if (holds) {
            reasons.add(reason);
        }
    }

    private static List<StandingFact<ActionPlanned>> needed(JobSheet sheet) {
        return sheet.actions().stream()
                .filter(a -> !PlanRequirement.needless(sheet, a))
                .toList();
    }

    private static boolean isTrainees(StandingFact<ActionPlanned> action) {
        return action.stamp().roles().contains(Role.TRAINEE)
                || action.lastStamp().roles().contains(Role.TRAINEE);
    }

    /** Of all rounds together: what was planned and not found needless. */
    private static BigDecimal cost(JobSheet sheet) {
        return sheet.all(ActionPlanned.class, a -> counts(sheet, a)).stream()
                .map(a -> a.fact().costAmount())
                .reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    /** An action of an earlier round that was never settled was never made. */
    private static boolean counts(JobSheet sheet, StandingFact<ActionPlanned> action) {
        return action.round() == sheet.round()
                ? !PlanRequirement.needless(sheet, action)
                : sheet.settlement(action.entry())
                        .filter(s -> s.fact().changesDevice())
                        .isPresent();
    }

    static String lacking(Situation s) {
        List<String> reasons = reasons(s.sheet(), s.policy()).stream()
                .map(r -> r.words(s.sheet(), s.policy()))
                .toList();
        if (reasons.isEmpty() || stands(s.sheet())) {
            return "";
        }
        String declined = s.sheet()
                .latestOfRound(PlanDeclined.class)
                .map(d -> " It was declined: " + d.fact().reason())
                .orElse("");
        return "Somebody else has to approve this plan first: " + String.join("; ", reasons) + "." + declined;
    }

    /** What keeps that person from approving or declining. */
    static List<Missing> refusedTo(Actor actor, Situation s, boolean byMentorToo) {
        boolean mentors = byMentorToo
                && actor.is(Role.MENTOR)
                && reasons(s.sheet(), s.policy()).equals(EnumSet.of(Reason.TRAINEE));
        if (!actor.is(Role.SUPERVISOR) && !mentors) {
            return Missing.rule(
                    "not-your-role",
                    "A supervisor approves this; a mentor where the only reason is that a trainee planned it.",
                    "plan-approved");
        }
        return List.of();
    }

    /** An approval covers the actions it names, as they were; a later change or a later refusal undoes it. */
    private static boolean stands(JobSheet sheet) {
        var approval = sheet.latestOfRound(PlanApproved.class);
        if (approval.isEmpty()) {
            return false;
        }
        int given = approval.get().entry();
        boolean declinedSince = sheet.latestOfRound(PlanDeclined.class)
                .filter(d -> d.isAfter(given))
                .isPresent();
        return !declinedSince
                && needed(sheet).stream()
                        .allMatch(a -> approval.get().fact().actions().contains(a.entry()) && a.isSettledBefore(given));
    }
}
