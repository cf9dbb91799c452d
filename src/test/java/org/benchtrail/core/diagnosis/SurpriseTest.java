package org.benchtrail.core.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SurpriseTest {
    private static final CauseCategory POWER =
            StarterJson.catalogue().category("power").orElseThrow();
    private static final Model MODEL = new Model(POWER, ModelSettings.STANDARD);

    private static Surprise of(Evidence e) {
        return Surprise.of(Ranking.of(MODEL, e));
    }

    private static Evidence yes(String... findings) {
        Evidence e = Evidence.NONE;
        for (String f : findings) {
            List<String> values = MODEL.finding(MODEL.findingIndex(f)).values();
            e = e.with(Invented.report(f, values.get(1), 0.98, e.reports().size()));
        }
        return e;
    }

    private static Evidence failed(double first, double second) {
        return Evidence.NONE
                .with(new FailedRepair("POW-06", first, Invented.T0))
                .with(new FailedRepair("POW-04", second, Invented.T0));
    }

    @Test
    void answersThatFitNoCause_areRed_andTheWorstTwoAreNamed() {
        Surprise s = of(yes("p3", "p9", "p12", "p4"));
        assertEquals(Surprise.Level.RED, s.level());
        assertTrue(s.conflict() >= 5 && s.misfits().size() == 2, s.toString());
    }

    @Test
    void oneFinding_hasNoConflict() {
        for (Finding f : POWER.findings()) {
            assertEquals(0, of(yes(f.id())).conflict(), 1e-12);
        }
    }

    @Test
    void noEvidence_saysNothing() {
        Surprise s = of(Evidence.NONE);
        assertEquals(Surprise.Level.NONE, s.level());
        assertEquals(0, s.z());
        assertEquals("", s.level().sentence());
    }

    @Test
    void twoFailedRepairs_ofMostBelief_areRed() {
        assertEquals(Surprise.Level.RED, of(failed(0.4, 0.3)).level());
        assertEquals(Surprise.Level.NONE, of(failed(0.4, 0.29)).level());
        Evidence one = Evidence.NONE.with(new FailedRepair("POW-06", 0.9, Invented.T0));
        assertEquals(Surprise.Level.NONE, of(one).level());
    }

    @Test
    void differingReports_askForAnotherLook() {
        Evidence e = Evidence.NONE.with(Invented.report("p5", "yes", 0.8, 1)).with(Invented.report("p5", "no", 0.8, 2));
        Surprise.Contradiction c = of(e).contradictions().get(0);
        assertEquals("p5", c.finding());
        assertTrue(c.offered(), "settling a tester result moves the leaders by more than 3 dB: " + c.effect());
        assertEquals(List.of(), of(yes("p5")).contradictions());
    }

    /** Two reports together: mean and variance over all four combinations, by hand. */
    @Test
    void severalReportsOnOneFinding_areExpectedTogether() {
        Evidence e =
                Evidence.NONE.with(Invented.report("p6", "yes", 0.8, 1)).with(Invented.report("p6", "no", 0.95, 2));
        Surprise s = of(e);
        double yes = Belief.p(MODEL, MODEL.findingIndex("p6"), MODEL.index(s.topListed()), 1);
        double mean = 0;
        double square = 0;
        double seen = 0;
        for (int x = 0; x < 2; x++) {
            for (int y = 0; y < 2; y++) {
                double u = yes * at(x == 1, 0.8) * at(y == 1, 0.95) + (1 - yes) * at(x == 0, 0.8) * at(y == 0, 0.95);
                mean += u * Math.log(u);
                square += u * Math.log(u) * Math.log(u);
                seen = x == 1 && y == 0 ? Math.log(u) : seen;
            }
        }
        assertEquals((mean - seen) / Math.sqrt(square - mean * mean), s.z(), 1e-9);
    }

    private static double at(boolean same, double reliability) {
        return (same ? reliability : 0) + (1 - reliability) / 2;
    }

    private static Model twoFaults() {
        return new Model(
                Invented.category(
                        240,
                        List.of(
                                Invented.answer("a", 0.02, 1),
                                Invented.answer("b", 0.02, 1),
                                Invented.answer("c", 0.02, 1),
                                Invented.answer("d", 0.02, 1)),
                        List.of(
                                Invented.cause(
                                        "x",
                                        1,
                                        Invented.repair(5, 0.9),
                                        Invented.yes("a", 0.9),
                                        Invented.yes("b", 0.9)),
                                Invented.cause(
                                        "y",
                                        1,
                                        Invented.repair(5, 0.9),
                                        Invented.yes("c", 0.9),
                                        Invented.yes("d", 0.9)),
                                Invented.cause("z", 1, Invented.repair(5, 0.9)))),
                ModelSettings.STANDARD);
    }

    @Test
    void twoFaultsThatExplainAll_areNamed_butNeverInThePercentages() {
        Model m = twoFaults();
        Evidence e = Evidence.NONE;
        for (String f : List.of("a", "b", "c", "d")) {
            e = e.with(Invented.report(f, "yes", 0.95, e.reports().size()));
        }
        Ranking ranking = Ranking.of(m, e);
        double[] before = ranking.probabilities();
        PairCheck pair = PairCheck.of(ranking, Surprise.of(ranking)).orElseThrow();
        assertEquals("Two faults together would explain all: cause x and cause y.", pair.sentence(m));
        assertTrue(pair.gain() > 10);
        assertEquals(before[0], ranking.probability("x"));
        Evidence half = e.without("c").without("d");
        Ranking fine = Ranking.of(m, half);
        assertTrue(PairCheck.of(fine, Surprise.of(fine)).isEmpty());
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.05, 0.2, 0.5})
    void rowOfTwoCauses_isTheNoisyOrOverTheBackground(double background) {
        double[] b = {1 - background, background};
        double[] one = {0.3, 0.7};
        double[] two = {0.1, 0.9};
        double expected = 1 - (1 - background) * ((1 - 0.7) / (1 - background)) * ((1 - 0.9) / (1 - background));
        assertEquals(expected, PairCheck.together(one, two, b)[1], 1e-12);
        double[] lower = {0.99, 0.01};
        assertEquals(0.01, PairCheck.together(lower, two, b)[1], 1e-12);
    }
}
