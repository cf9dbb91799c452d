package org.benchtrail.core.diagnosis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Map;
import org.benchtrail.core.Invalid;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ReadingAndWordsTest {
    private static Finding reading(@Nullable Double low, @Nullable Double high, double guard, String... abnormal) {
        List<String> values = new java.util.ArrayList<>(List.of(Finding.INSIDE));
        values.addAll(List.of(abnormal));
        double each = 0.2 / abnormal.length;
        Map<String, Double> p = new java.util.HashMap<>(Map.of(Finding.INSIDE, 0.8));
        for (String v : abnormal) {
            p.put(v, each);
        }
        Limits limits = new Limits("V", low, high, guard, -50.0, 500.0);
        return new Finding("volts", "volts?", Finding.Kind.READING, values, p, 3, Risk.NONE, List.of(), null, limits);
    }

    @ParameterizedTest
    @CsvSource({"206.9, below, .98", "207, inside, .98", "230, inside, .98", "253, inside, .98", "253.1, above, .98"})
    void limits_areInclusive(double x, String value, double reliability) {
        Finding f = reading(207.0, 253.0, 0, Finding.BELOW, Finding.ABOVE);
        assertEquals(new Finding.JudgedReading(value, reliability), f.judge(x, 0, 0.98));
    }

    /** Guard 2 V: trust falls in proportion to the distance from the limit, to one half on it. */
    @ParameterizedTest
    @CsvSource({"207, .5", "208, .5", "208.5, .735", "209, .98", "209.1, .98", "205.5, .735", "251.5, .735"})
    void nearALimit_trustFalls(double x, double trust) {
        Finding f = reading(207.0, 253.0, 2, Finding.BELOW, Finding.ABOVE);
        assertEquals(trust, f.judge(x, 0, 0.98).reliability(), 1e-12);
        assertEquals(
                trust, reading(207.0, 253.0, 0, Finding.BELOW).judge(x, 2, 0.98).reliability(), 1e-12);
    }

    @Test
    void littleTrust_isNotRaisedByANearLimit() {
        assertEquals(
                0.3, reading(207.0, 253.0, 2, Finding.BELOW).judge(207, 0, 0.3).reliability());
    }

    @Test
    void oneSidedEntries_countTheOtherSideAsInside() {
        assertEquals(
                "inside",
                reading(207.0, 253.0, 0, Finding.BELOW).judge(260, 0, 0.9).value());
        assertEquals(
                "outside",
                reading(207.0, 253.0, 0, Finding.OUTSIDE).judge(260, 0, 0.9).value());
        assertEquals(
                "outside",
                reading(207.0, 253.0, 0, Finding.OUTSIDE).judge(200, 0, 0.9).value());
        assertEquals(
                "above", reading(null, 95.0, 0, Finding.ABOVE).judge(96, 0, 0.9).value());
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, -51, 501})
    void implausible_isRefusedNotClassified(double x) {
        Finding f = reading(207.0, 253.0, 0, Finding.BELOW);
        assertThrows(Invalid.class, () -> f.judge(x, 0, 0.9));
    }

    @ParameterizedTest
    @CsvSource({
        "0.99, makes no difference",
        "-0.5, makes no difference",
        "1, speaks slightly for it",
        "-2.99, speaks slightly against it",
        "3, speaks clearly for it",
        "-7, speaks strongly against it",
        "13, speaks strongly for it",
        "13.01, speaks very strongly for it"
    })
    void strength(double decibans, String words) {
        assertEquals(words, Words.strength(decibans));
        assertEquals(words, new Explanation.Term(Explanation.Origin.FINDING, "f", decibans).words());
    }

    @ParameterizedTest
    @CsvSource({
        "0.0001, less than 1 in 20",
        "0.0499, less than 1 in 20",
        "0.05, about 1 in 20",
        "0.08, about 1 in 10",
        "0.61, about 6 in 10",
        "0.949, about 9 in 10",
        "0.95, almost certain",
        "0.99999, almost certain"
    })
    void chance(double p, String words) {
        assertEquals(words, Words.chance(p));
    }

    @Test
    void evidenceTheCategoryDoesNotKnow_isRefusedWithEveryReason() {
        CauseCategory c = Invented.category(
                240, List.of(Invented.answer("f", 0.2, 1)), List.of(Invented.cause("a", 1, Invented.repair(5, 0.9))));
        Model m = new Model(c, ModelSettings.STANDARD);
        Evidence e = Evidence.NONE
                .with(Invented.report("nothing", "yes", 0.9, 1))
                .with(Invented.report("f", "perhaps", 0.9, 2))
                .with(new FailedRepair("nobody", 0.5, Invented.T0));
        Invalid thrown = assertThrows(Invalid.class, () -> Ranking.of(m, e));
        assertEquals(
                List.of("reports[0].finding", "reports[1].value", "failedRepairs[0].repair"),
                thrown.problems().stream().map(Invalid.Problem::field).toList());
        assertThrows(Invalid.class, () -> Invented.report("f", "yes", 0.981, 1));
        assertThrows(Invalid.class, () -> Invented.report("f", "yes", Double.NaN, 1));
        assertThrows(Invalid.class, () -> m.index("nobody"));
    }

    @Test
    void sources_haveTheirReliability() {
        assertEquals(0.98, Source.CALIBRATED.reliability());
        assertEquals(0.95, Source.SEEN.reliability());
        assertEquals(0.85, Source.OUT_OF_DATE.reliability());
        assertEquals(
                0.80, Report.of("r", "f", "yes", Source.REPORTED, Invented.T0).reliability());
        assertEquals(0.60, Source.INTERMITTENT.reliability());
    }
}
