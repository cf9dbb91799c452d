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
 * @param needMinutes by need: what it takes to meet it; zero or more, and zero if it is not named
 * @param floor which repairs are too improbable to be advised
 * @param leaveMinutes what it takes to leave in what a test has cured, verify and record; above 0
 */
public record PlanSettings(
        Map<Risk, Double> riskMinutes,
        double minutesPerCost,
        double plannedReliability,
        double thresholdMinutes,
        double thresholdShare,
        double gateBelief,
        boolean prune,
        int lookaheadTests,
        Map<String, Double> needMinutes,
        Floor floor,
        double leaveMinutes) {

    private static final Map<String, Double> NEED_MINUTES = Map.of(
            Needs.BACKUP_DONE,
            30.0,
            "change-approved",
            10.0,
            "outage-announced",
            10.0,
            "owner-asked",
            5.0,
            "key-at-hand",
            5.0,
            Needs.LOSS_ACCEPTED,
            5.0,
            "change-noted",
            2.0,
            "device-isolated",
            10.0,
            "hazard-cleared",
            15.0);

    /** All minutes, thresholds, the gate and the floor are common practice, no source. */
    public static final PlanSettings STANDARD = new PlanSettings(
            Map.of(Risk.NONE, 0.0, Risk.LOW, 2.0, Risk.MEDIUM, 15.0, Risk.HIGH, 60.0),
            0,
            1,
            2,
            0.02,
            0.9,
            true,
            0,
            NEED_MINUTES,
            Floor.STANDARD,
            5);

    /** @throws Invalid with every value outside its domain */
    public PlanSettings {
        riskMinutes = Map.copyOf(new EnumMap<>(riskMinutes));
        needMinutes = Map.copyOf(needMinutes);
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
                .require(
                        needMinutes.values().stream().allMatch(PlanSettings::isAmount),
                        "needMinutes",
                        "give minutes of zero or more for every need")
                .require(leaveMinutes > 0 && isAmount(leaveMinutes), "leaveMinutes", "give minutes above 0")
                .throwIfAny();
    }

    /** What it takes to meet a need. */
    double minutes(String need) {
        return needMinutes.getOrDefault(need, 0.0);
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
        return with(none, plannedReliability, thresholdMinutes, thresholdShare, prune, lookaheadTests, floor);
    }

    public PlanSettings withThreshold(double minutes, double share) {
        return with(riskMinutes, plannedReliability, minutes, share, prune, lookaheadTests, floor);
    }

    public PlanSettings withPrune(boolean on) {
        return with(riskMinutes, plannedReliability, thresholdMinutes, thresholdShare, on, lookaheadTests, floor);
    }

    public PlanSettings withLookahead(int tests) {
        return with(riskMinutes, plannedReliability, thresholdMinutes, thresholdShare, prune, tests, floor);
    }

    public PlanSettings withPlannedReliability(double reliability) {
        return with(riskMinutes, reliability, thresholdMinutes, thresholdShare, prune, lookaheadTests, floor);
    }

    public PlanSettings withFloor(Floor another) {
        return with(riskMinutes, plannedReliability, thresholdMinutes, thresholdShare, prune, lookaheadTests, another);
    }

    private PlanSettings with(
            Map<Risk, Double> risk,
            double reliability,
            double threshold,
            double share,
            boolean pruned,
            int tests,
            Floor least) {
        return new PlanSettings(
                risk,
                minutesPerCost,
                reliability,
                threshold,
                share,
                gateBelief,
                pruned,
                tests,
                needMinutes,
                least,
                leaveMinutes);
    }
}
