package org.benchtrail.core.diagnosis;

import java.util.Map;
import java.util.Set;

/**
 * What holds on the bench just now, apart from evidence.
 *
 * @param met needs that are met, such as {@code backup-done}
 * @param confirmed causes whose confirming check came out positive
 * @param hazards stop-work hazards not yet cleared; while there is one, nothing else is ranked
 * @param setUpMinutes by finding: access set-up not yet done, such as opening the case
 * @param withheld findings that are not offered as tests here
 */
public record BenchSituation(
        Set<String> met,
        Set<String> confirmed,
        Set<String> hazards,
        Map<String, Double> setUpMinutes,
        Set<String> withheld) {
    public static final BenchSituation PLAIN = new BenchSituation(Set.of(), Set.of(), Set.of(), Map.of());

    /** Nothing is withheld. */
    public BenchSituation(
            Set<String> met, Set<String> confirmed, Set<String> hazards, Map<String, Double> setUpMinutes) {
        this(met, confirmed, hazards, setUpMinutes, Set.of());
    }

    public BenchSituation {
        met = Set.copyOf(met);
        confirmed = Set.copyOf(confirmed);
        hazards = Set.copyOf(hazards);
        setUpMinutes = Map.copyOf(setUpMinutes);
        withheld = Set.copyOf(withheld);
    }
}
