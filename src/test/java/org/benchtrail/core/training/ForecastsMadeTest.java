package org.benchtrail.core.training;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.benchtrail.core.Published;
import org.benchtrail.core.statistics.Interval;
import org.benchtrail.core.training.ForecastsMade.Scored;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ForecastsMadeTest {
    private static final String SOURCE = "half of Brier's original sum, recomputed in Python";
    private static final Map<String, Integer> STATED = Map.of("a", 50, "b", 30, "c", 15, "other", 5);
    private static final Map<String, Double> CATALOGUE =
            Map.of("a", 0.25, "b", 0.25, "c", 0.25, "d", 0.2, "other", 0.05);

    private static Scored scored(int job, Map<String, Integer> percents, String truth) {
        return new Scored(job, percents, truth, CATALOGUE);
    }

    /** The last one is a cause that was not named: part of something else. */
    @ParameterizedTest
    @CsvSource({"a, 0.1825, 0.693147", "b, 0.3825, 1.203973", "c, 0.5325, 1.897120", "d, 0.6325, 2.995732"})
    void distribution_isScoredOverAllItsCauses(String truth, double brier, double nats) {
        Scored one = scored(1, STATED, truth);
        Published.check(SOURCE, brier, one.brier(), 1e-12);
        Published.check(SOURCE, nats, one.logarithmic(), 1e-6);
        assertFalse(one.isRuledOut());
    }

    /** One half of (1/4 - 1)^2 + 3 (1/4)^2: the catalogue gave each of the four classes the same. */
    @Test
    void reference_isTheCataloguesOwn_forTheSameClasses() {
        assertEquals(0.375, scored(1, STATED, "a").referenceBrier(), 1e-12);
        assertEquals(0.375, scored(1, STATED, "d").referenceBrier(), 1e-12);
        ForecastsMade made = new ForecastsMade(List.of(scored(1, STATED, "a")));
        assertEquals(1 - 0.1825 / 0.375, made.skill().orElseThrow(), 1e-12);
        assertTrue(new ForecastsMade(List.of(new Scored(1, Map.of("a", 90, "other", 10), "a", Map.of("a", 1.0))))
                .skill()
                .isEmpty());
    }

    @Test
    void ruledOut_isInfinite_andCounted() {
        Scored one = scored(1, Map.of("a", 0, "b", 100, "other", 0), "a");
        assertTrue(one.isRuledOut());
        assertEquals(Double.POSITIVE_INFINITY, one.logarithmic());
        assertEquals(1, one.brier(), 1e-12);
        assertEquals(1, new ForecastsMade(List.of(one, scored(2, STATED, "a"))).ruledOut());
        assertEquals("b", one.leading());
        assertEquals("a", scored(1, Map.of("a", 50, "b", 50, "other", 0), "b").leading());
    }

    @ParameterizedTest
    @CsvSource({
        "0.1, 0.0001, 0.2, Surer",
        "0.1, 0, 0.2, As sure",
        "0.1, -0.0001, 0.2, As sure",
        "-0.1, -0.2, -0.0001, Right more often",
        "-0.1, -0.2, 0, As sure",
        "-0.1, -0.2, 0.0001, As sure"
    })
    void words_followTheInterval(double mean, double lower, double upper, String begin) {
        String words = ForecastsMade.words(mean, new Interval(lower, upper, 0.95));
        assertTrue(words.startsWith(begin), words);
    }

    @Test
    void words_waitForFiveTickets() {
        assertTrue(new ForecastsMade(List.of()).words().startsWith("Nothing is scored yet"));
        List<Scored> four = IntStream.range(0, 4)
                .mapToObj(job -> scored(job, STATED, job % 2 == 0 ? "a" : "b"))
                .toList();
        assertTrue(new ForecastsMade(four).words().startsWith("Too few tickets"));
        List<Scored> twice = IntStream.range(0, 8)
                .mapToObj(i -> scored(i / 2, STATED, i % 2 == 0 ? "a" : "b"))
                .toList();
        assertTrue(new ForecastsMade(twice).words().startsWith("Too few tickets"), "of four tickets");
        List<Scored> always = IntStream.range(0, 6)
                .mapToObj(job -> scored(job, Map.of("a", 90 + job % 2, "other", 10 - job % 2), "b"))
                .toList();
        String words = new ForecastsMade(always).words();
        assertTrue(words.startsWith("Surer than right, by 90.5 points."), words);
    }
}
