package org.benchtrail.core.bench.network;

import static org.benchtrail.core.Published.check;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.FigureOf;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.network.CopperLink.Category;
import org.benchtrail.core.bench.network.CopperLink.Input;
import org.benchtrail.core.bench.network.CopperLink.Reading;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CopperLinkTest {
    private static Result of(Category category, double link, double cords, double uncertainty, Reading... readings) {
        return CopperLink.calculate(new Input(category, link, cords, List.of(readings), uncertainty));
    }

    @ParameterizedTest
    @CsvSource({
        "1, 2.3997, 2.2712, 2.1905, 2.2408, 2.1458",
        "10, 7.1501, 6.5566, 6.4011, 7.1013, 6.3321",
        "100, 24.0154, 21.7108, 20.7710, 24.0145, 21.2960"
    })
    void limits_reproduceTheTable(double f, double d, double e, double classF, double tia5, double tia6) {
        String iso = "ISO/IEC 11801 in IEEE 802.3 contribution, March 2004";
        check(iso, d, Category.ISO_D.computed(f), 5e-5);
        check(iso, e, Category.ISO_E.computed(f), 5e-5);
        check(iso, classF, Category.ISO_F.computed(f), 5e-5);
        check("TIA-568-C.2 formula, from memory", tia5, Category.TIA_5E.computed(f), 5e-5);
        check("TIA-568-C.2 formula, from memory", tia6, Category.TIA_6.computed(f), 5e-5);
    }

    @Test
    void limits_atTheEndOfTheRange() {
        check("ISO/IEC 11801 in IEEE 802.3 contribution, March 2004", 24.01, Category.ISO_D.limit(100), 0.01);
        check("ISO/IEC 11801 in IEEE 802.3 contribution, March 2004", 21.71, Category.ISO_E.limit(100), 0.005);
        check("ISO/IEC 11801 in IEEE 802.3 contribution, March 2004", 35.93, Category.ISO_E.limit(250), 0.005);
        check("ISO/IEC 11801 in IEEE 802.3 contribution, March 2004", 33.7867, Category.ISO_F.limit(250), 5e-5);
        check("TIA-568-C.2 printed tables, from memory", 24.0, Category.TIA_5E.limit(100), 0.05);
        check("TIA-568-C.2 printed tables, from memory", 21.3, Category.TIA_6.limit(100), 0.05);
        check("TIA-568-C.2 printed tables, from memory", 35.9, Category.TIA_6.limit(250), 0.1);
    }

    /** Printed to one decimal. */
    @ParameterizedTest
    @CsvSource({
        "TIA_5E, '1 2.2, 4 4.5, 8 6.3, 10 7.1, 16 9.1, 20 10.2, 25 11.4, 31.25 12.9, 62.5 18.6, 100 24.0'",
        "TIA_6, '1 2.1, 4 4.0, 8 5.7, 10 6.3, 16 8.0, 20 9.0, 25 10.1, 31.25 11.4, 62.5 16.5, 100 21.3, 200 31.5'"
    })
    void limits_reproduceThePrintedTables(Category category, String rows) {
        for (String row : rows.split(", ")) {
            String[] of = row.split(" ");
            double limit = category.limit(Double.parseDouble(of[0]));
            check("TIA-568-C.2 printed tables, from memory", Double.parseDouble(of[1]), limit, 0.05);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "ISO_D, '1 4.0, 16 9.1, 100 24.0'",
        "ISO_E, '1 4.0, 16 8.3, 100 21.7, 250 35.9'",
        "ISO_F, '1 4.0, 16 8.1, 100 20.8, 250 33.8, 600 54.6'"
    })
    void limits_reproduceTheInformativeValues(Category category, String rows) {
        for (String row : rows.split(", ")) {
            String[] of = row.split(" ");
            double limit = category.limit(Double.parseDouble(of[0]));
            check("ISO/IEC 11801 informative values, from memory", Double.parseDouble(of[1]), limit, 0.05);
        }
    }

    @ParameterizedTest
    @CsvSource({"90, 10, UNDECIDED", "90.1, 5, BAD", "90, 10.1, BAD", "20, 81, BAD"})
    void length_isHeldAgainstNinetyAndHundredMetres(double link, double cords, Level level) {
        check(
                "IEEE 802.3 / TIA-568 channel length",
                level,
                of(Category.ISO_E, link, cords, 0).judgement().level());
    }

    @Test
    void lossAtTheLimit_conforms_andAboveItFails() {
        double limit = Category.ISO_E.limit(100);
        assertEquals(
                Level.GOOD,
                of(Category.ISO_E, 80, 5, 0, new Reading(100, limit))
                        .judgement()
                        .level());
        assertEquals(
                Level.BAD,
                of(Category.ISO_E, 80, 5, 0, new Reading(100, limit + 1e-9))
                        .judgement()
                        .level());
    }

    @Test
    void lossWithinTheTestersUncertainty_isTooCloseToCall() {
        double limit = Category.ISO_E.limit(100);
        assertEquals(
                Level.UNDECIDED,
                of(Category.ISO_E, 80, 5, 0.5, new Reading(100, limit - 0.4))
                        .judgement()
                        .level());
        assertEquals(
                Level.UNDECIDED,
                of(Category.ISO_E, 80, 5, 0.5, new Reading(100, limit + 0.4))
                        .judgement()
                        .level());
        assertEquals(
                Level.BAD,
                of(Category.ISO_E, 80, 5, 0.5, new Reading(100, limit + 0.6))
                        .judgement()
                        .level());
    }

    @Test
    void isoLimitsBelowFourDecibels_areLifted() {
        assertEquals(
                Level.GOOD,
                of(Category.ISO_E, 80, 5, 0, new Reading(1, 3.9)).judgement().level());
        assertEquals(
                Level.BAD,
                of(Category.TIA_6, 80, 5, 0, new Reading(1, 3.9)).judgement().level());
        assertEquals(
                Level.BAD,
                of(Category.ISO_E, 80, 5, 0, new Reading(1, 4.1)).judgement().level());
    }

    /** The tables of the standard print 4.0 dB at 1 MHz for every class. */
    @ParameterizedTest
    @CsvSource({
        "ISO_D, 1, 4.0",
        "ISO_D, 16, 9.1",
        "ISO_D, 100, 24.0",
        "ISO_E, 1, 4.0",
        "ISO_E, 16, 8.3",
        "ISO_E, 100, 21.7",
        "ISO_E, 250, 35.9",
        "ISO_F, 1, 4.0",
        "ISO_F, 16, 8.1",
        "ISO_F, 100, 20.8",
        "ISO_F, 250, 33.8",
        "ISO_F, 600, 54.6"
    })
    void isoTables_areReproducedWhole(Category category, double f, double printed) {
        check(
                "ISO/IEC 11801:2002, channel insertion loss, printed tables (from memory)",
                printed,
                category.limit(f),
                0.051);
    }

    /** Cords of 24 AWG beside a link of so many metres, as printed. */
    @ParameterizedTest
    @CsvSource({"90, 10", "85, 14", "80, 18", "75, 22", "70, 27"})
    void cords_followThePrintedTable(double link, double cords) {
        check("TIA-568-C.1, cord lengths in open offices (from memory)", cords, CopperLink.longestCords(link), 0.51);
    }

    @Test
    void worstMargin_isReported() {
        Result result = of(Category.ISO_E, 80, 5, 0, new Reading(100, 10), new Reading(10, 6));
        assertEquals(Category.ISO_E.limit(10) - 6, FigureOf.value(result, "Margin at the worst point"), 1e-12);
        assertEquals(2, result.curves().size());
        assertEquals(10, result.curves().get(1).points().get(0).x(), "readings are drawn by frequency");
    }

    @ParameterizedTest
    @CsvSource({"ISO_D, 101", "TIA_5E, 100.1", "ISO_E, 251", "TIA_6, 251", "ISO_F, 601", "ISO_E, 0.9"})
    void frequencyOutsideTheCategory_isRefused(Category category, double f) {
        Invalid refusal = assertThrows(Invalid.class, () -> of(category, 80, 5, 0, new Reading(f, 5)));
        assertEquals("readings[0].frequency", refusal.problems().get(0).field());
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void limit_risesWithFrequency_fromFiveMegahertzOn(long seed) {
        Random random = new Random(seed);
        for (Category category : Category.values()) {
            for (int i = 0; i < 300; i++) {
                double f = 5 + (category.highest() - 5) * random.nextDouble();
                assertTrue(category.limit(f * 1.001) > category.limit(f), "seed " + seed + " " + category + " " + f);
            }
        }
    }
}
