package org.benchtrail.core.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeout;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.Random;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Published;
import org.benchtrail.core.measure.Accuracy.Absolute;
import org.benchtrail.core.measure.Accuracy.Certified;
import org.benchtrail.core.measure.Accuracy.PercentPlusCounts;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class JudgementTest {
    private static final String JCGM = "JCGM 106:2012, clause 7, examples (numbers from memory, recomputed)";
    private static final String FORMULA = "JCGM 106:2012, clause 7, recomputed in SciPy";
    private static final String ILAC = "ILAC-G8:09/2019, 4.2 (seen)";
    private static final String ATX = "ATX12V Power Supply Design Guide 2.0, table 2 (seen)";
    private static final String MATH = "Apache Commons Math 3.6.1";
    private static final double NONE = Double.POSITIVE_INFINITY;
    private static final Limit RAIL =
            Limit.between("11.40", "12.60", Units.VOLT, "ATX12V Power Supply Design Guide 2.0");

    @Test
    void probability_publishedExamples() {
        Published.check(JCGM, 0.919243, Conformance.probability(-5.47, -NONE, -5.40, 0.05), 5e-7);
        Published.check(JCGM, 0.989010, Conformance.probability(509.7, 490, NONE, 8.6), 5e-7);
        double speed = 106.587609;
        Published.check(JCGM, 0.999, Conformance.probability(speed, 100, NONE, 0.02 * speed), 5e-7);
        Published.check(FORMULA, 0.866740, Conformance.probability(12.55, 11.40, 12.60, 0.045), 5e-7);
        Published.check(FORMULA, 0.328361, Conformance.probability(11.38, 11.40, 12.60, 0.045), 5e-7);
        Published.check(FORMULA, 0.500000, Conformance.probability(12.60, 11.40, 12.60, 0.045), 5e-7);
        Published.check(FORMULA, 0.977250, Conformance.probability(11.49, 11.40, 12.60, 0.045), 5e-7);
        Published.check(FORMULA, 0.769861, Conformance.probability(12.0, 11.40, 12.60, 0.5), 5e-7);
        Published.check(FORMULA, 0.908789, Conformance.probability(4.79, 4.75, 5.25, 0.03), 5e-7);
    }

    @ParameterizedTest
    @CsvSource({"0.80,0.841621", "0.90,1.281552", "0.95,1.644854", "0.99,2.326348", "0.999,3.090232"})
    void probability_oneSidedTable(double expected, double z) {
        Published.check(FORMULA, expected, Conformance.probability(-z, -NONE, 0, 1), 1e-7);
        Published.check(FORMULA, expected, Conformance.probability(z, 0, NONE, 1), 1e-7);
    }

    @Test
    void probability_riskOfTheGuardBand() {
        Published.check(ILAC, 0.022750, Conformance.probability(2, -NONE, 0, 1), 5e-7);
        Published.check(ILAC, 0.024998, Conformance.probability(1.96, -NONE, 0, 1), 5e-7);
        Published.check(FORMULA, 0.049985, Conformance.probability(1.645, -NONE, 0, 1), 5e-7);
    }

    @Test
    void probability_againstLibrary_farIntoTheTails() {
        NormalDistribution normal = new NormalDistribution(0, 1);
        for (double z = 0; z < 30; z += 0.7) {
            double expected = normal.cumulativeProbability(-z);
            Published.check(MATH, expected, Conformance.probability(z, -NONE, 0, 1), 1e-10 * expected);
        }
    }

    @Test
    void probability_outsideItsDomain_isRefused() {
        assertThrows(Invalid.class, () -> Conformance.probability(1, 0, 2, 0));
        assertThrows(Invalid.class, () -> Conformance.probability(1, 0, 2, Double.NaN));
        assertThrows(Invalid.class, () -> Conformance.probability(Double.NaN, 0, 2, 1));
        assertThrows(Invalid.class, () -> Conformance.probability(1, 2, 2, 1));
    }

    @ParameterizedTest
    @CsvSource({
        "12.55,TOO_CLOSE_TO_CALL,true",
        "11.38,TOO_CLOSE_TO_CALL,false",
        "11.30,OUTSIDE,false",
        "12.00,WITHIN,true",
        "11.491,WITHIN,true",
        "11.489,TOO_CLOSE_TO_CALL,true",
        "12.691,OUTSIDE,false",
        "12.689,TOO_CLOSE_TO_CALL,false",
    })
    void judge_guardBandOfU_givesTheFourZones(String value, Verdict verdict, boolean inside) {
        Judgement judgement = RAIL.judge(rail(value, "0.045"), GuardBand.EXPANDED);
        Published.check(ILAC, verdict, judgement.verdict());
        Published.check(ILAC, inside, judgement.isValueInside());
        assertEquals(0.09, judgement.guardBand(), 1e-12);
    }

    @Test
    void judge_uncertaintyAsWideAsTheLimits_isUndecidedNotFailed() {
        Judgement judgement = RAIL.judge(rail("12.0", "0.5"), GuardBand.EXPANDED);
        Published.check(ILAC, Verdict.TOO_CLOSE_TO_CALL, judgement.verdict());
        assertTrue(judgement.isUncertaintyTooLarge());
        assertTrue(judgement.sentence().contains("too large to decide"), judgement.sentence());
        assertTrue(judgement.sentence().contains("77.0 %"), judgement.sentence());
    }

    /** At 2w = upper − lower the middle alone would be left; the rule calls that undecidable. */
    @Test
    void judge_guardBandsThatMeet_areUndecided() {
        Limit limit = Limit.between("8", "12", Units.VOLT, "policy");
        Published.check(
                ILAC,
                Verdict.TOO_CLOSE_TO_CALL,
                limit.judge(rail("10", "1"), GuardBand.EXPANDED).verdict());
        assertEquals(
                Verdict.WITHIN,
                limit.judge(rail("10", "0.99"), GuardBand.EXPANDED).verdict());
    }

    @Test
    void judge_wideUncertainty_stillSeesWhatIsFarOutside() {
        assertEquals(
                Verdict.OUTSIDE,
                RAIL.judge(rail("20", "0.5"), GuardBand.EXPANDED).verdict());
        assertEquals(
                Verdict.OUTSIDE,
                RAIL.judge(rail("0", "0.5"), GuardBand.EXPANDED).verdict());
    }

    @ParameterizedTest
    @CsvSource({
        "11.62,WITHIN",
        "11.38,OUTSIDE",
        "11.40,WITHIN",
        "12.60,WITHIN",
        "11.39,OUTSIDE",
        "12.61,OUTSIDE",
    })
    void judge_withoutGuardBand_isThePlainInclusiveComparison(String value, Verdict verdict) {
        Published.check(
                ATX, verdict, RAIL.judge(rail(value, "0.045"), GuardBand.NONE).verdict());
        Judgement plain = RAIL.judge(Reading.plain(Quantity.of(value, Units.VOLT)), GuardBand.EXPANDED);
        Published.check(ATX, verdict, plain.verdict());
        assertTrue(plain.probability().isEmpty());
        assertEquals(0, plain.guardBand());
        assertTrue(plain.sentence().contains("accuracy is not known"), plain.sentence());
    }

    @Test
    void judge_railsOfTheLibrary_atTheirEdges() {
        rails("atx12v-2.0-plus3.3", "3.14", "3.13");
        rails("atx12v-2.0-minus12", "-11.9", "-10.79");
        rails("atx12v-2.0-minus12", "-13.20", "11.9");
        rails("iec-60038-230", "207", "206.9");
        rails("iec-60038-230", "253", "253.1");
        rails("ansi-c84.1-120-service-b", "113.9", "109.9");
        rails("ansi-c84.1-120-service-a", "114", "113.9");
    }

    private static void rails(String id, String within, String outside) {
        Limit limit = LimitLibrary.published().find(id).orElseThrow().limit();
        String source = limit.source();
        Published.check(source, true, limit.contains(Quantity.of(within, Units.VOLT)));
        Published.check(source, false, limit.contains(Quantity.of(outside, Units.VOLT)));
    }

    @Test
    void judge_exclusiveLimit_refusesItsEdge() {
        Limit spare = Limit.atLeast("10", Units.PERCENT, "policy").exclusive();
        assertFalse(spare.contains(Quantity.of("10", Units.PERCENT)));
        assertTrue(spare.contains(Quantity.of("10.1", Units.PERCENT)));
        assertEquals("more than 10 %", spare.words());
    }

    @Test
    void judge_exactCount_isCertain() {
        Limit none = Limit.atMost("0", Units.COUNTED, "policy");
        Accuracy exact = new Absolute(Quantity.of("0", Units.COUNTED));
        Judgement three = none.judge(new Reading(Quantity.parse("3 count"), exact), GuardBand.EXPANDED);
        assertEquals(Verdict.OUTSIDE, three.verdict());
        assertEquals(0, three.probability().orElseThrow());
        assertEquals("3 count is outside the limit of at most 0 count (policy).", three.sentence());
        Judgement zero = none.judge(new Reading(Quantity.parse("0 count"), exact), GuardBand.EXPANDED);
        assertEquals(1, zero.probability().orElseThrow());
    }

    @Test
    void sentence_saysValueLimitSourceAndChance() {
        assertEquals(
                "11.38 V is too close to call against the limit of 11.40 to 12.60 V (ATX12V Power Supply Design Guide"
                        + " 2.0). It lies 0.020 V outside, no further than the guard band of 0.090 V; with a standard"
                        + " uncertainty of 0.045 V the probability that the true value is within is 32.8 %. Measure again"
                        + " with a more accurate instrument, or several times.",
                RAIL.judge(rail("11.38", "0.045"), GuardBand.EXPANDED).sentence());
        assertEquals(
                "12.00 V is within the limit of 11.40 to 12.60 V (ATX12V Power Supply Design Guide 2.0). It lies 0.60 V"
                        + " inside, further than the guard band of 0.090 V; with a standard uncertainty of 0.045 V the"
                        + " probability that the true value is within is more than 99.9 %.",
                RAIL.judge(rail("12.00", "0.045"), GuardBand.EXPANDED).sentence());
        String outside = RAIL.judge(rail("11.30", "0.045"), GuardBand.EXPANDED).sentence();
        assertTrue(outside.contains("is outside the limit of 11.40 to 12.60 V"), outside);
        assertTrue(outside.contains("1.3 %"), outside);
    }

    @Test
    void limit_outsideItsDomain_isRefused() {
        assertThrows(Invalid.class, () -> Limit.of(null, null, Units.VOLT, "policy"));
        assertThrows(Invalid.class, () -> Limit.between("2", "1", Units.VOLT, "policy"));
        assertThrows(Invalid.class, () -> Limit.between("1", "1", Units.VOLT, "policy"));
        assertThrows(Invalid.class, () -> Limit.atLeast("1", Units.VOLT, " "));
        assertThrows(Invalid.class, () -> new GuardBand(-1));
        assertThrows(Invalid.class, () -> new GuardBand(Double.NaN));
        Reading amps = Reading.plain(Quantity.parse("12 A"));
        assertThrows(Invalid.class, () -> RAIL.judge(amps, GuardBand.NONE));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void judge_inAnotherUnit_isTheSameToTheLastBit(long seed) {
        Random random = new Random(seed);
        Limit milli = RAIL.in(Units.named("mV"));
        for (int i = 0; i < 5000; i++) {
            Quantity volts = Quantity.of(BigDecimal.valueOf(1000 + random.nextInt(400), 2), Units.VOLT);
            Quantity step = Quantity.of(BigDecimal.valueOf(1, random.nextInt(4)), Units.VOLT);
            double percent = random.nextInt(30) / 10.0;
            GuardBand policy = new GuardBand(random.nextInt(4));
            Judgement one = RAIL.judge(new Reading(volts, new PercentPlusCounts(percent, 2, step)), policy);
            Reading other = new Reading(
                    volts.to(Units.named("µV")), new PercentPlusCounts(percent, 2, step.to(Units.named("mV"))));
            Judgement two = milli.judge(other, policy);
            String where = "seed " + seed + ": " + volts + " " + step + " " + percent + " " + policy;
            assertEquals(one.verdict(), two.verdict(), where);
            assertEquals(one.probability(), two.probability(), where);
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {5, 6, 7})
    void judge_onAnotherTemperatureScale_isTheSame(long seed) {
        Random random = new Random(seed);
        Limit inlet = Limit.between("18", "27", Units.CELSIUS, "policy");
        Limit fahrenheit = inlet.in(Units.named("°F"));
        for (int i = 0; i < 2000; i++) {
            Quantity air = Quantity.of(BigDecimal.valueOf(150 + random.nextInt(160), 1), Units.CELSIUS);
            Reading one = new Reading(air, new Absolute(Quantity.parse("0.5 °C")));
            Reading two = new Reading(air.to(Units.named("°F")), new Absolute(Quantity.parse("0.9 °F")));
            Judgement celsius = inlet.judge(one, GuardBand.EXPANDED);
            Judgement other = fahrenheit.judge(two, GuardBand.EXPANDED);
            assertEquals(celsius.verdict(), other.verdict(), "seed " + seed + ": " + air);
            assertEquals(
                    celsius.probability().orElseThrow(),
                    other.probability().orElseThrow(),
                    1e-9,
                    "seed " + seed + ": " + air);
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {8, 9, 10})
    void probability_fallsMonotonicallyAwayFromTheMiddle(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 2000; i++) {
            double u = Math.exp(random.nextGaussian() * 2);
            double near = random.nextDouble() * 10;
            double far = near + random.nextDouble();
            String where = "seed " + seed + ": u " + u + ", " + near + " and " + far;
            double atNear = Conformance.probability(near, -1, 1, u);
            double atFar = Conformance.probability(far, -1, 1, u);
            assertTrue(atNear >= atFar - 1e-15, where);
            assertEquals(atNear, Conformance.probability(-near, -1, 1, u), 1e-14, where);
            double lower = Conformance.probability(near, 0, NONE, u);
            assertTrue(lower <= Conformance.probability(far, 0, NONE, u), where);
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {31, 32, 33})
    void judge_widerGuardBand_neverTurnsOneAnswerIntoTheOther(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 2000; i++) {
            Reading reading =
                    rail(BigDecimal.valueOf(1100 + random.nextInt(200), 2).toPlainString(), "0.06");
            Verdict plain = RAIL.judge(reading, GuardBand.NONE).verdict();
            Verdict guarded =
                    RAIL.judge(reading, new GuardBand(random.nextDouble() * 10)).verdict();
            assertTrue(guarded == plain || guarded == Verdict.TOO_CLOSE_TO_CALL, "seed " + seed + ": " + reading);
        }
    }

    /** A guard against an accident of some orders of magnitude; the figure itself is measured elsewhere. */
    @Test
    void judge_aMillionTimes_isAMatterOfSeconds() {
        Reading reading =
                new Reading(Quantity.parse("11.62 V"), new PercentPlusCounts(0.5, 2, Quantity.parse("10 mV")));
        double sum = assertTimeout(Duration.ofSeconds(30), () -> {
            double probabilities = 0;
            for (int i = 0; i < 1_000_000; i++) {
                probabilities +=
                        RAIL.judge(reading, GuardBand.EXPANDED).probability().orElseThrow();
            }
            return probabilities;
        });
        assertTrue(sum > 999_000);
    }

    private static Reading rail(String volts, String u) {
        return new Reading(Quantity.of(volts, Units.VOLT), new Certified(Quantity.of(u, Units.VOLT), 1));
    }
}
