package org.benchtrail.core.diagnosis;

import java.util.ArrayList;
import java.util.List;

/** What holds a repair back. A matter of care, not of minutes: no saving opens it. */
final class RepairGate {
    private RepairGate() {}

    /**
     * @param belief probability of what the repair covers
     * @param causes what it covers
     * @return what is missing, as sentences; empty if nothing is
     */
    static List<String> reasons(
            Repair repair, double belief, List<Cause> causes, BenchSituation situation, PlanSettings settings) {
        List<String> reasons = new ArrayList<>();
        for (String need : Needs.missing(repair, situation.met())) {
            reasons.add("first: " + need.replace('-', ' '));
        }
        if (mustBeConfirmed(repair, belief, causes, situation, settings)) {
            reasons.add("confirm it first: " + ways(causes));
        }
        return reasons;
    }

    /** Whether it is too grave for what is believed. */
    static boolean mustBeConfirmed(
            Repair repair, double belief, List<Cause> causes, BenchSituation situation, PlanSettings settings) {
        return isGrave(repair) && belief < settings.gateBelief() && !isConfirmed(causes, situation);
    }

    private static boolean isConfirmed(List<Cause> causes, BenchSituation situation) {
        return causes.stream().anyMatch(c -> situation.confirmed().contains(c.id()));
    }

    private static boolean isGrave(Repair repair) {
        return repair.risk() == Risk.HIGH || !repair.reversible();
    }

    private static String ways(List<Cause> causes) {
        return String.join(
                ", or ",
                causes.stream()
                        .map(c -> c.confirm() + ", about " + Math.round(c.confirmMinutes()) + " min")
                        .toList());
    }
}
