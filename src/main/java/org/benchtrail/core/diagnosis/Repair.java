package org.benchtrail.core.diagnosis;

import java.util.List;
import java.util.Set;

/**
 * The repair of one cause, verification included.
 *
 * @param minutes of work, 0.5 to 10 000
 * @param verifyMinutes to see whether it helped, 0.5 to 10 000
 * @param fixProbability that it removes the fault given the cause; in (0, 0.99]
 * @param partCost in the site's currency, zero or more; {@link PlanSettings#minutesPerCost} makes minutes of it
 * @param needs what must be so before, such as {@code backup-done}
 * @param dangers what it can hurt
 */
public record Repair(
        String text,
        double minutes,
        double verifyMinutes,
        double fixProbability,
        double partCost,
        Risk risk,
        boolean reversible,
        List<String> needs,
        Set<Danger> dangers) {
    public Repair {
        needs = List.copyOf(needs);
        dangers = Danger.inOrder(dangers);
    }

    /** One that endangers nobody. */
    public Repair(
            String text,
            double minutes,
            double verifyMinutes,
            double fixProbability,
            double partCost,
            Risk risk,
            boolean reversible,
            List<String> needs) {
        this(text, minutes, verifyMinutes, fixProbability, partCost, risk, reversible, needs, Set.of());
    }
}
