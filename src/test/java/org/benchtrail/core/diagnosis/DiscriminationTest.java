package org.benchtrail.core.diagnosis;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** How far a finding tells one cause from all others together. */
class DiscriminationTest {
    private static final double DIGITS = 6e-7;

    private static double[] row(double yes) {
        return new double[] {1 - yes, yes};
    }

    /** Recomputed apart from this program. */
    @Test
    void smallCases() {
        Discrimination.Divergence far = Discrimination.Divergence.of(row(.9), row(.1));
        assertArrayEquals(new double[] {-9.542425, 9.542425}, far.weights(), DIGITS);
        for (double p : new double[] {.01, .4, .99}) {
            assertEquals(7.633940, far.expected(p), DIGITS);
        }
        Discrimination.Divergence rare = Discrimination.Divergence.of(row(.25), row(.03));
        assertEquals(9.208188, rare.weights()[1], DIGITS);
        assertEquals(-1.117105, rare.weights()[0], DIGITS);
        assertEquals(1.135782, rare.expected(.5), DIGITS);
        assertEquals(0, Discrimination.Divergence.of(row(.3), row(.3)).expected(.7));
    }

    @Test
    void divergence_isNeverNegative_swaps_andGrowsWithTrust() {
        long seed = System.nanoTime();
        System.out.println("divergence, seed " + seed);
        Random random = new Random(seed);
        for (int k = 0; k < 2000; k++) {
            double a = .01 + .98 * random.nextDouble();
            double b = .01 + .98 * random.nextDouble();
            double p = random.nextDouble();
            Discrimination.Divergence one = Discrimination.Divergence.of(row(a), row(b));
            Discrimination.Divergence other = Discrimination.Divergence.of(row(b), row(a));
            assertTrue(one.ifRight() >= 0 && one.ifWrong() >= 0, "seed " + seed);
            assertEquals(one.ifRight(), other.ifWrong(), 1e-12);
            assertEquals(
                    one.expected(p),
                    Discrimination.Divergence.of(row(1 - a), row(1 - b)).expected(p),
                    1e-9,
                    "renaming values changes nothing");
            double rho = random.nextDouble();
            double weaker = Discrimination.Divergence.of(row(rho * a + (1 - rho) / 2), row(rho * b + (1 - rho) / 2))
                    .expected(p);
            assertTrue(weaker <= one.expected(p) + 1e-12, "seed " + seed);
        }
    }

    private static final Finding TELLS = Invented.answer("tells", .05, 2);
    private static final Finding DULL = Invented.answer("dull", .3, 1);

    private static Ranking ranking(Evidence evidence) {
        Cause a = Invented.cause("a", 1, Invented.repair(5, .9), Invented.yes("tells", .9));
        Cause b = Invented.cause("b", 3, Invented.repair(5, .9), Invented.yes("dull", .35));
        return Ranking.of(
                new Model(Invented.category(240, List.of(TELLS, DULL), List.of(a, b)), ModelSettings.STANDARD),
                evidence);
    }

    @Test
    void onlyWhatTellsByThreeDecibans_isOffered_andNotTwice() {
        Discrimination theory = new Discrimination(ranking(Evidence.NONE), "a", Source.SEEN.reliability());
        List<Discrimination.Offer> offers = theory.offers(PlanSettings.STANDARD, BenchSituation.PLAIN);
        assertEquals(
                List.of("tells"),
                offers.stream().map(Discrimination.Offer::finding).toList());
        assertEquals("yes", offers.get(0).sign());
        assertTrue(offers.get(0).isCheck());
        Evidence asked = Evidence.NONE.with(Invented.report("tells", "yes", .95, 1));
        assertEquals(
                List.of(),
                new Discrimination(ranking(asked), "a", Source.SEEN.reliability())
                        .offers(PlanSettings.STANDARD, BenchSituation.PLAIN));
        assertEquals("a", Discrimination.favoured(ranking(Evidence.NONE), "tells"));
    }

    /** A finding that the theory does not touch never makes "no" the expected sign for its size alone. */
    @Test
    void sign_isWhatSpeaksMostForTheTheory() {
        Discrimination.Offer offer = new Discrimination(ranking(Evidence.NONE), "b", 1 - 1e-9).of("tells", 2);
        assertEquals("no", offer.sign());
        assertEquals(Discrimination.Bearing.RULES_OUT, offer.bearing("yes"));
    }
}
