package org.benchtrail.core.training;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.benchtrail.core.practice.job.Family;
import org.junit.jupiter.api.Test;

class TrialTurnTest {
    private static final String SEED = "0706050403020100";

    private static List<TrialTurn> turns(String person, Set<Family> practised, int each) {
        return TrialTurn.of(SEED, person, practised, each);
    }

    @Test
    void everyPair_isOneDevice_onceWithAndOnceWithout() {
        for (int person = 0; person < 200; person++) {
            int pairs = Family.values().length + 1;
            List<TrialTurn> turns = turns("p" + person, Set.of(), pairs);
            assertEquals(2 * pairs, turns.size());
            for (int pair = 0; pair < 2 * pairs; pair += 2) {
                assertEquals(turns.get(pair).family(), turns.get(pair + 1).family());
                assertNotEquals(turns.get(pair).coached(), turns.get(pair + 1).coached());
            }
            assertEquals(
                    Set.of(Family.values()),
                    turns.stream().map(TrialTurn::family).collect(Collectors.toSet()),
                    "one pair more than there are devices reaches them all");
        }
    }

    @Test
    void whatIsNew_comesFirst() {
        for (int person = 0; person < 100; person++) {
            assertEquals(
                    Family.DRIVE,
                    turns("p" + person, EnumSet.complementOf(EnumSet.of(Family.DRIVE)), 1)
                            .get(0)
                            .family());
        }
    }

    @Test
    void theCoin_isFair_andTheSameToWhoeverLooks() {
        long first = IntStream.range(0, 4000)
                .filter(p -> turns("p" + p, Set.of(), 1).get(0).coached())
                .count();
        // within 4 standard deviations of the half
        assertTrue(Math.abs(first - 2000) < 4 * Math.sqrt(1000), "coached first: " + first);
        assertEquals(turns("kim", Set.of(), 6), turns("kim", Set.of(), 6));
        assertNotEquals(
                turns("kim", Set.of(), 12), TrialTurn.of("0706050403020101", "kim", Set.of(), 12), "another seed");
    }
}
