package org.benchtrail.core.training;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.benchtrail.core.practice.Chance;
import org.benchtrail.core.practice.job.Family;

/**
 * One job of a person in a test of the coach.
 *
 * @param coached whether the coach stands beside it
 */
public record TrialTurn(Family family, boolean coached) {
    /**
     * The jobs of one person, in pairs on the same kind of device, one with the coach and one without. The same seed gives the same
     * order to everybody who looks.
     *
     * @param order the published seed, in hexadecimal
     * @param practised devices that the person has practised on; others come first
     * @param jobsEach how many with the coach, and as many without
     */
    public static List<TrialTurn> of(String order, String person, Set<Family> practised, int jobsEach) {
        Chance chance = new Chance(HexFormat.of().parseHex(order));
        List<Family> families = Stream.of(Family.values())
                .sorted(Comparator.comparing((Family family) -> practised.contains(family))
                        .thenComparing(family -> chance.uniform("family|" + person + "|" + family.id())))
                .toList();
        List<TrialTurn> turns = new ArrayList<>();
        for (int pair = 0; pair < jobsEach; pair++) {
            Family family = families.get(pair % families.size());
            boolean first = chance.uniform("coach|" + person + "|" + pair) < 0.5;
            turns.add(new TrialTurn(family, first));
            turns.add(new TrialTurn(family, !first));
        }
        return turns;
    }
}
