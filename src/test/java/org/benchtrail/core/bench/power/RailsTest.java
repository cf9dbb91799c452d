package org.benchtrail.core.bench.power;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.Published;
import org.benchtrail.core.bench.FigureOf;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.power.Rails.Edition;
import org.benchtrail.core.bench.power.Rails.Input;
import org.benchtrail.core.bench.power.Rails.Rail;
import org.benchtrail.core.bench.power.Rails.Reading;
import org.junit.jupiter.api.Test;

class RailsTest {
    private static final String GUIDE = "ATX12V Power Supply Design Guide 2.0, table 2";
    private static final String OLDER = "ATX Specification 2.1, DC voltage regulation";

    private static Result load(Edition edition, Rail rail, double volts, boolean peak) {
        return Rails.calculate(new Input(edition, List.of(new Reading(rail, null, volts, peak, null))));
    }

    private static Level level(Rail rail, double volts) {
        return load(Edition.ATX12V_2_0, rail, volts, false).judgement().level();
    }

    @Test
    void limits_areThePrintedOnes_andInclusive() {
        assertEdges(Rail.PLUS_12, 11.40, 12.60);
        assertEdges(Rail.PLUS_5, 4.75, 5.25);
        assertEdges(Rail.STANDBY_5, 4.75, 5.25);
        assertEdges(Rail.PLUS_3_3, 3.14, 3.47);
        assertEdges(Rail.MINUS_12, -13.20, -10.80);
    }

    private static void assertEdges(Rail rail, double low, double high) {
        Published.check(GUIDE, Level.GOOD, level(rail, low));
        Published.check(GUIDE, Level.GOOD, level(rail, high));
        Published.check(GUIDE, Level.BAD, level(rail, low - 0.001));
        Published.check(GUIDE, Level.BAD, level(rail, high + 0.001));
    }

    @Test
    void worked_readings() {
        Published.check(GUIDE, Level.GOOD, level(Rail.PLUS_12, 11.62));
        Published.check(
                GUIDE,
                -3.1667,
                FigureOf.value(load(Edition.ATX12V_2_0, Rail.PLUS_12, 11.62, false), "+12 V under load, deviation"),
                5e-5);
        Published.check(GUIDE, Level.BAD, level(Rail.PLUS_12, 11.38));
        Published.check(GUIDE, Level.GOOD, level(Rail.PLUS_3_3, 3.14));
        Published.check(GUIDE, Level.BAD, level(Rail.PLUS_3_3, 3.13));
        Published.check(GUIDE, Level.BAD, level(Rail.MINUS_12, -10.79));
        Published.check(GUIDE, Level.GOOD, level(Rail.MINUS_12, -11.9));
    }

    @Test
    void peakLoad_widensTwelveVolts() {
        Published.check(
                GUIDE + ", note 1",
                Level.GOOD,
                load(Edition.ATX12V_2_0, Rail.PLUS_12, 10.80, true).judgement().level());
        Published.check(
                GUIDE + ", note 1",
                Level.BAD,
                load(Edition.ATX12V_2_0, Rail.PLUS_12, 10.79, true).judgement().level());
        Published.check(
                GUIDE + ", note 1",
                Level.GOOD,
                load(Edition.ATX12V_2_0, Rail.PLUS_12, 13.20, true).judgement().level());
        FigureOf.names(
                assertThrows(Invalid.class, () -> load(Edition.ATX_3, Rail.PLUS_12, 11, true)), "readings[0].peak");
        FigureOf.names(
                assertThrows(Invalid.class, () -> load(Edition.ATX12V_2_0, Rail.PLUS_5, 5, true)), "readings[0].peak");
    }

    @Test
    void editions_differ() {
        Published.check(
                OLDER,
                Level.GOOD,
                load(Edition.ATX_2_1, Rail.PLUS_3_3, 3.168, false).judgement().level());
        Published.check(
                OLDER,
                Level.BAD,
                load(Edition.ATX_2_1, Rail.PLUS_3_3, 3.167, false).judgement().level());
        Published.check(
                OLDER,
                Level.BAD,
                load(Edition.ATX_2_1, Rail.PLUS_3_3, 3.433, false).judgement().level());
        assertEquals(
                Level.GOOD,
                load(Edition.ATX_3, Rail.PLUS_12, 11.16, false).judgement().level());
        assertEquals(
                Level.BAD,
                load(Edition.ATX_3, Rail.PLUS_12, 11.15, false).judgement().level());
        assertEquals(
                Level.GOOD,
                load(Edition.ATX_3, Rail.PLUS_12_GRAPHICS, 11.04, false)
                        .judgement()
                        .level());
        assertEquals(
                Level.BAD,
                load(Edition.ATX_3, Rail.PLUS_12_GRAPHICS, 11.03, false)
                        .judgement()
                        .level());
    }

    @Test
    void wrongPolarity_isAnInputError_notAVerdict() {
        FigureOf.names(assertThrows(Invalid.class, () -> level(Rail.MINUS_12, 11.9)), "readings[0].load");
        FigureOf.names(assertThrows(Invalid.class, () -> level(Rail.PLUS_12, -12.0)), "readings[0].load");
    }

    @Test
    void deadRail_isOutside() {
        assertEquals(Level.BAD, level(Rail.PLUS_12, 0));
    }

    @Test
    void uncertainty_opensABandThatDecidesNothing() {
        assertEquals(Level.GOOD, withUncertainty(11.50));
        assertEquals(Level.UNDECIDED, withUncertainty(11.48));
        assertEquals(Level.UNDECIDED, withUncertainty(11.32));
        assertEquals(Level.BAD, withUncertainty(11.30));
    }

    private static Level withUncertainty(double volts) {
        Reading reading = new Reading(Rail.PLUS_12, null, volts, false, 0.09);
        return Rails.calculate(new Input(Edition.ATX12V_2_0, List.of(reading)))
                .judgement()
                .level();
    }

    @Test
    void sag_andIdleOnly() {
        Reading both = new Reading(Rail.PLUS_12, 12.10, 11.62, false, null);
        Result result = Rails.calculate(new Input(Edition.ATX12V_2_0, List.of(both)));
        assertEquals(0.48, FigureOf.value(result, "+12 V, sag from idle to load"), 1e-12);
        Reading idle = new Reading(Rail.PLUS_12, 12.10, null, false, null);
        Result unproven = Rails.calculate(new Input(Edition.ATX12V_2_0, List.of(idle)));
        assertEquals(Level.CAREFUL, unproven.judgement().level());
        assertEquals("within the guide at idle only", unproven.judgement().words());
    }

    @Test
    void problems_areToldAllAtOnce() {
        List<Reading> readings = List.of(
                new Reading(Rail.PLUS_5, null, null, false, -1.0),
                new Reading(Rail.PLUS_12, Double.NaN, 12.0, false, null),
                new Reading(Rail.PLUS_5, 5.0, null, false, null));
        Invalid refusal = assertThrows(Invalid.class, () -> new Input(Edition.ATX12V_2_0, readings));
        for (String field : List.of("readings[0].idle", "readings[0].uncertainty", "readings[1].idle", "readings")) {
            FigureOf.names(refusal, field);
        }
    }
}
