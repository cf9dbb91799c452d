package org.benchtrail.core.bench.network;

import static org.benchtrail.core.bench.FigureOf.assertVerdict;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.Collections;
import java.util.List;
import org.benchtrail.core.bench.FigureOf;
import org.benchtrail.core.bench.Numeral;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Level;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Each verdict at, under and over the boundary at which it changes. */
class NetworkVerdictTest {
    @ParameterizedTest
    @CsvSource({"81.7, 18.3, true", "81.7, 18.31, false", "89.9, 10.1, true", "90, 10, true", "90.01, 9.99, false"})
    void copper_channelIsAtMostAHundredMetres(double link, double cords, boolean fits) {
        Result result = copper(CopperLink.Category.ISO_E, link, cords, new CopperLink.Reading(100, 10));
        assertEquals(
                !fits,
                result.judgement().words().equals("too long"),
                result.judgement().reason());
    }

    @ParameterizedTest
    @CsvSource({"46.2, CAREFUL", "46.19, BAD", "51.34, GOOD", "51.33, CAREFUL"})
    void poe_budgetAndHeadroomAtTheirLimits(double budget, Level level) {
        List<PoeBudget.Port> ports = Collections.nCopies(3, new PoeBudget.Port(3, 30));
        Result result = PoeBudget.calculate(new PoeBudget.Input(budget, 4, ports));
        assertEquals(level, result.judgement().level(), result.judgement().reason());
    }

    @Test
    void poe_deviceOnAPortOfALowerClassGetsThatClass() {
        Result result = PoeBudget.calculate(
                new PoeBudget.Input(100, 3, List.of(new PoeBudget.Port(4, 100), new PoeBudget.Port(3, 50))));
        assertEquals(15.4 + 15.4, FigureOf.value(result, "Set aside"), 1e-12);
        assertEquals(12.95, FigureOf.value(result, "Port 1: at the device"), 0.005);
        assertVerdict(Level.CAREFUL, "a device gets less than it asks for", result);
        assertEquals(Level.CAREFUL, FigureOf.rule(result, "Port 1: class").outcome());
        assertEquals(Level.GOOD, FigureOf.rule(result, "Port 2: class").outcome());
    }

    @ParameterizedTest
    @CsvSource({"4, 4, GOOD", "4, 3, CAREFUL", "0, 3, GOOD", "0, 2, CAREFUL", "6, 8, GOOD"})
    void poe_classIsHeldAgainstThePort(int device, int port, Level level) {
        Result result = PoeBudget.calculate(new PoeBudget.Input(200, port, List.of(new PoeBudget.Port(device, 10))));
        assertEquals(level, FigureOf.rule(result, "Port 1: class").outcome());
    }

    private static Result copper(CopperLink.Category category, double link, double cords, CopperLink.Reading... r) {
        return CopperLink.calculate(new CopperLink.Input(category, link, cords, List.of(r), 0));
    }

    @ParameterizedTest
    @CsvSource({"3.9, GOOD", "4.0, GOOD", "4.01, BAD"})
    void copper_isoLimitIsNeverBelowFourDecibels(double loss, Level level) {
        Result result = copper(CopperLink.Category.ISO_E, 80, 5, new CopperLink.Reading(1, loss));
        assertEquals(level, result.judgement().level(), result.judgement().reason());
        assertEquals(4.0 - loss, FigureOf.value(result, "Margin at the worst point"), 1e-12);
    }

    @Test
    void copper_uncertaintyIsHeldAgainstTheLiftedLimit() {
        Result result = CopperLink.calculate(
                new CopperLink.Input(CopperLink.Category.ISO_E, 80, 5, List.of(new CopperLink.Reading(1, 3.8)), 0.3));
        assertEquals(Level.UNDECIDED, result.judgement().level());
    }

    /** Cords of stranded wire lose a fifth more for each metre: (102 m - link) / 1.2 is what is left for them. */
    @ParameterizedTest
    @CsvSource({"90, 10, GOOD", "80, 18.3, GOOD", "80, 18.4, CAREFUL", "70, 26.6, GOOD", "70, 27.5, CAREFUL"})
    void copper_longCordsAreSaid(double link, double cords, Level level) {
        Result result = copper(CopperLink.Category.ISO_E, link, cords, new CopperLink.Reading(100, 10));
        assertEquals(level, FigureOf.rule(result, "cords").outcome());
        assertEquals(level, result.judgement().level(), result.judgement().reason());
    }

    @Test
    void loss_probesThatSettleItAreWholeAndEnough() {
        Result result = Loss.calculate(new Loss.Input(0, 200, 0.5, 95));
        double probes = FigureOf.value(result, "Probes without loss that would settle it");
        assertEquals(Math.rint(probes), probes, "no part of a probe can be sent");
        assertEquals(
                Level.GOOD,
                Loss.calculate(new Loss.Input(0, (int) probes, 0.5, 95))
                        .judgement()
                        .level());
        assertEquals(
                Level.UNDECIDED,
                Loss.calculate(new Loss.Input(0, (int) probes - 1, 0.5, 95))
                        .judgement()
                        .level());
        String shown = Numeral.of(
                probes,
                result.figures().stream()
                        .filter(f -> f.name().startsWith("Probes without"))
                        .findFirst()
                        .orElseThrow()
                        .digits());
        assertEquals(probes, Double.parseDouble(shown));
    }

    /** ln(0.025) / ln(0.99) = 367.04, which rounded to the nearest would be one too few. */
    @ParameterizedTest
    @CsvSource({"367, UNDECIDED", "368, GOOD", "369, GOOD"})
    void loss_probesThatSettleItAreRoundedUp(int probes, Level level) {
        Result open = Loss.calculate(new Loss.Input(0, 200, 1, 95));
        assertEquals(368, FigureOf.value(open, "Probes without loss that would settle it"));
        assertEquals(
                level,
                Loss.calculate(new Loss.Input(0, probes, 1, 95)).judgement().level());
    }

    @Test
    void loss_thatMayNeverBeCannotBeShownNotToBe() {
        Result result = Loss.calculate(new Loss.Input(0, 1_000_000, 0, 95));
        assertVerdict(Level.UNDECIDED, "none lost so far", result);
        assertFalse(
                result.judgement().reason().contains("send more"),
                result.judgement().reason());
    }

    @ParameterizedTest
    @CsvSource({
        "1.99, CAREFUL, loss binds",
        "2, BAD, loss is too high to predict",
        "99.9, BAD, loss is too high to predict",
        "100, BAD, nothing gets through"
    })
    void path_thatLosesAllCarriesNothing(double loss, Level level, String words) {
        assertVerdict(
                level,
                words,
                PathThroughput.calculate(new PathThroughput.Input(
                        100, 40, 1e9, loss, 1460, PathThroughput.Acknowledgement.DELAYED, null, null, null)));
    }
}
