package org.benchtrail.core.diagnosis;

import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import org.benchtrail.core.Invalid;

/**
 * How acts are weighed at one site. All minutes are working minutes.
 *
 * @param riskMinutes what each risk is charged with; zero or more
 * @param minutesPerCost minutes that one unit of the site's currency is worth; zero or more
 * @param plannedReliability reliability a test to come is expected to have; in (0, 1]
 * @param thresholdMinutes a test must save at least this
 * @param thresholdShare and at least this share of the plan's minutes; 0 to 1
 * @param gateBelief probability from which a high-risk or irreversible repair may be proposed without a confirming test
 * @param prune whether tests that cannot help are left out; changes no recommendation
 * @param lookaheadTests how many of the best tests are looked at two steps deep; 0 to look one step
 */
public record PlanSettings(
        Map<Risk, Double> riskMinutes,
        double minutesPerCost,
        double plannedReliability,
        double thresholdMinutes,
        double thresholdShare,
        double gateBelief,
        boolean prune,
        int lookaheadTests) {

    /** Risk minutes, thresholds and the gate are common practice, no source. */
    public static final PlanSettings STANDARD = new PlanSettings(
            Map.of(Risk.NONE, 0.0, Risk.LOW, 2.0, Risk.MEDIUM, 15.0, Risk.HIGH, 60.0), 0, 1, 2, 0.02, 0.9, true, 0);

    /** @throws Invalid with every value outside its domain */
    public PlanSettings {
        riskMinutes = Map.copyOf(new EnumMap<>(riskMinutes));
        new Invalid.Collector()
                .require(
                        riskMinutes.size() == Risk.values().length
                                && riskMinutes.values().stream().allMatch(PlanSettings::isAmount),
                        "riskMinutes",
                        "give minutes of zero or more for every risk")
                .require(isAmount(minutesPerCost), "minutesPerCost", "give minutes of zero or more")
                .require(
                        plannedReliability > 0 && plannedReliability <= 1,
                        "plannedReliability",
                        "give a reliability above 0, at most 1")
                .require(isAmount(thresholdMinutes), "thresholdMinutes", "give minutes of zero or more")
                .require(thresholdShare >= 0 && thresholdShare <= 1, "thresholdShare", "give a share from 0 to 1")
                .require(gateBelief > 0 && gateBelief <= 1, "gateBelief", "give a probability above 0, at most 1")
                .require(lookaheadTests >= 0, "lookaheadTests", "give a number of zero or more")
                .throwIfAny();
    }

    /** What the risk is charged with. */
    double minutes(Risk risk) {
        return Objects.requireNonNull(riskMinutes.get(risk));
    }

    private static boolean isAmount(double x) {
        return x >= 0 && Double.isFinite(x);
    }

    /** Risk costs nothing. */
    public PlanSettings withoutRiskMinutes() {
        Map<Risk, Double> none = new EnumMap<>(Risk.class);
        for (Risk r : Risk.values()) {
            none.put(r, 0.0);
        }
        return new PlanSettings(
                none,
                minutesPerCost,
                plannedReliability,
                thresholdMinutes,
                thresholdShare,
                gateBelief,
                prune,
                lookaheadTests);
    }

    public PlanSettings withThreshold(double minutes, double share) {
        return new PlanSettings(
                riskMinutes, minutesPerCost, plannedReliability, minutes, share, gateBelief, prune, lookaheadTests);
    }

    public PlanSettings withPrune(boolean on) {
        return new PlanSettings(
                riskMinutes,
                minutesPerCost,
                plannedReliability,
                thresholdMinutes,
                thresholdShare,
                gateBelief,
                on,
                lookaheadTests);
    }

    public PlanSettings withLookahead(int tests) {
        return new PlanSettings(
                riskMinutes,
                minutesPerCost,
                plannedReliability,
                thresholdMinutes,
                thresholdShare,
                gateBelief,
                prune,
                tests);
    }

    public PlanSettings withPlannedReliability(double reliability) {
        return new PlanSettings(
                riskMinutes,
                minutesPerCost,
                reliability,
                thresholdMinutes,
                thresholdShare,
                gateBelief,
                prune,
                lookaheadTests);
    }
}
