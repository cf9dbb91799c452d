package org.benchtrail.core.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class NumeralTest {
    @ParameterizedTest
    @CsvSource({
        "0, 3, 0",
        "-0.0, 3, 0",
        "1234.5, 3, 1230",
        "1235, 3, 1240",
        "0.00012345, 2, 0.00012",
        "1e-14, 3, 1e-14",
        "-2.5e-9, 2, -2.5e-9",
        "999.96, 4, 1000",
        "1.5e20, 3, 1.5e20",
        "100, 9, 100",
        "4000787030016, 15, 4000787030016"
    })
    void writesSignificantDigits(double value, int digits, String written) {
        assertEquals(written, Numeral.of(value, digits));
    }

    /** The quick way and the decimals agree, also where the value was typed and ends in a 5. */
    @Test
    void anyNumber_isWrittenAsItsDecimalsRoundHalfUp() {
        Random random = new Random(20_261_126);
        for (int i = 0; i < 30_000; i++) {
            double value = Math.exp(random.nextDouble() * 29 - 9) * (random.nextBoolean() ? 1 : -1);
            if (i % 3 == 0) {
                value = BigDecimal.valueOf(random.nextInt(2_000_000) * 10L + 5, 1 + random.nextInt(7))
                        .doubleValue();
            } else if (i % 3 == 1) {
                value = Math.nextUp(Math.pow(10, random.nextInt(12) - 4) * (1 + random.nextInt(3)));
            }
            int digits = 1 + random.nextInt(12);
            BigDecimal rounded = BigDecimal.valueOf(value).round(new MathContext(digits, RoundingMode.HALF_UP));
            if (Math.abs(value) >= 1e-4) {
                String written = rounded.signum() == 0
                        ? "0"
                        : rounded.stripTrailingZeros().toPlainString();
                assertEquals(written, Numeral.of(value, digits), value + " to " + digits);
            }
        }
    }

    @Test
    void term_negative_standsInBrackets() {
        assertEquals("(-3)", Numeral.term(-3));
        assertEquals("3", Numeral.term(3));
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void notFinite_isRefused(double value) {
        assertThrows(IllegalArgumentException.class, () -> Numeral.of(value));
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 16})
    void digitsOutsideRange_areRefused(int digits) {
        assertThrows(IllegalArgumentException.class, () -> Numeral.of(1, digits));
    }

    @ParameterizedTest
    @CsvSource({"11.3999, 4, 11.4, 11.3999", "11.4, 4, 11.4, 11.4", "11.4001, 4, 11.4, 11.4001", "11.3999, 4, 20, 11.4"
    })
    void besideALimit_isNeverRoundedOntoIt(double value, int digits, double limit, String written) {
        assertEquals(written, Numeral.beside(value, digits, limit));
    }

    @ParameterizedTest
    @CsvSource({
        "-0.0, 0 %",
        "0, 0 %",
        "3e-55, less than 0.001 %",
        "0.000999, less than 0.001 %",
        "0.001, 0.001 %",
        "99.998, 99.998 %",
        "99.9999, more than 99.999 %",
        "100, 100 %",
        "100.04, 100.04 %"
    })
    void share_isNeverRoundedToNoneOrAll(double percent, String written) {
        assertEquals(written, Numeral.percent(percent));
        assertEquals(written, new Result.Figure("share", percent, "%", 3).text() + " %");
    }

    @ParameterizedTest
    @CsvSource({
        "-0.0, 0 %",
        "-3e-55, more than -0.001 %",
        "-0.000999, more than -0.001 %",
        "-0.001, -0.001 %",
        "-2.5, -2.5 %"
    })
    void negativeShare_isNeverRoundedToNoneNorWrittenAsMinusNone(double percent, String written) {
        assertEquals(written, Numeral.percent(percent));
        assertEquals(written, new Result.Figure("share", percent, "%", 3).text() + " %");
    }

    /** A difference of nothing may come as minus zero; neither figure nor working shows its sign. */
    @ParameterizedTest
    @ValueSource(strings = {"%", "V", "1"})
    void minusZero_isShownNowhere(String unit) {
        ResultDraft draft = new ResultDraft();
        double figure = draft.figure("Difference", "a - b", "2 - 2", -0.0, unit, 3);
        double step = draft.step("Difference", "a - b", "2 - 2", -0.0, unit, 3);
        draft.figure("Deviation", "a - b", "2 - 2.1", -0.1, unit, 3);
        Result result = draft.judged(Result.Level.NONE, "none", "none");
        assertEquals(0, Double.compare(0.0, figure), "figure " + figure);
        assertEquals(0, Double.compare(0.0, step), "step " + step);
        assertEquals(0, Double.compare(0.0, result.figures().get(0).value()));
        assertEquals("0", result.figures().get(0).text());
        String end = unit.equals("1") ? "" : " " + unit;
        assertEquals("2 - 2 = 0" + end, result.working().get(0).withNumbers());
        assertEquals("2 - 2 = 0" + end, result.working().get(1).withNumbers());
        assertEquals("-0.1", result.figures().get(1).text());
    }

    @ParameterizedTest
    @CsvSource({
        "0.0004, less than 1 ms",
        "0.0005, 0.5 ms",
        "0.0999, 99.9 ms",
        "0.1, 0.1 s",
        "1.002, 1 s",
        "119.4, 119 s",
        "120, 2 min",
        "7194, 120 min",
        "7200, 2 h",
        "172800, 2 d",
        "63115199, 730 d",
        "63115200, 2 years",
        "31557600000, 1000 years"
    })
    void time_isWrittenInTheUnitInWhichItIsSaid(double seconds, String written) {
        assertEquals(written, Numeral.duration(seconds));
    }

    /** A bound where a figure would say nothing, never an exponent. */
    @ParameterizedTest
    @CsvSource({
        "0, about 0 s",
        "0.0004, less than 1 ms",
        "0.0005, about 0.5 ms",
        "31557600000, about 1000 years",
        "31557600001, more than 1000 years",
        "8.8e21, more than 1000 years"
    })
    void timeNextToNoneOrEndless_isABound(double seconds, String written) {
        assertEquals(written, Numeral.about(seconds));
    }

    @ParameterizedTest
    @CsvSource({
        "2.43678, 0.0123, 100, 2.437",
        "2.43678, 0, 100, 2.43678",
        "0.0001, 3, 100, 0",
        "-0.0001, 3, 100, 0",
        "11.3996, 0.05, 11.4, 11.3996",
        "11.4, 0.05, 11.4, 11.400"
    })
    void digits_goDownToTheSecondOfTheUncertainty(double value, double uncertainty, double limit, String written) {
        assertEquals(written, Numeral.within(value, uncertainty, limit));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void readBack_agreesToTheDigitsWritten(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 1000; i++) {
            double value = random.nextGaussian() * Math.pow(10, random.nextInt(40) - 20);
            int digits = 1 + random.nextInt(15);
            double read = Double.parseDouble(Numeral.of(value, digits));
            assertEquals(
                    value,
                    read,
                    Math.abs(value) * 0.5000001 * Math.pow(10, 1 - digits),
                    "seed " + seed + ", " + digits);
        }
    }
}
