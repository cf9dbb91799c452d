package org.benchtrail.core.diagnosis;

import java.util.List;

/**
 * The repair of one cause, verification included.
 *
 * @param minutes of work, 0.5 to 10 000
 * @param verifyMinutes to see whether it helped, 0.5 to 10 000
 * @param fixProbability that it removes the fault given the cause; in (0, 0.99]
 * @param partCost in the site's currency, zero or more; {@link PlanSettings#minutesPerCost} makes minutes of it
 * @param needs what must be so before, such as {@code backup-done}
 */
public record Repair(
        String text,
        double minutes,
        double verifyMinutes,
        double fixProbability,
        double partCost,
        Risk risk,
        boolean reversible,
        List<String> needs) {
    public Repair {
        needs = List.copyOf(needs);
    }
}
