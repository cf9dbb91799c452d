package org.benchtrail.core.bench.storage;

import static org.benchtrail.core.bench.FigureOf.assertVerdict;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Collections;
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.FigureOf;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Level;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Each verdict at, under and over the boundary at which it changes. */
class StorageVerdictTest {
    private static Result array(Array.RaidLevel level, int members, double errors) {
        return Array.calculate(
                new Array.Input(level, Collections.nCopies(members, 12.0), 150, 100, errors, 1_200_000, 0));
    }

    /** 1e-14 over 12 TB gives a chance of 62 %, 1e-16 one of 0.96 %. */
    @ParameterizedTest
    @CsvSource({
        "RAID5, 3, 1e-14, CAREFUL",
        "RAID5, 3, 1e-17, GOOD",
        "RAID10, 4, 1e-14, CAREFUL",
        "RAID1, 2, 1e-14, CAREFUL",
        "RAID1, 3, 1e-14, GOOD",
        "RAID6, 4, 1e-14, GOOD"
    })
    void array_thatKeepsRedundancyWhileItRebuildsRisksNoReadError(
            Array.RaidLevel level, int members, double errors, Level expected) {
        Result result = array(level, members, errors);
        assertEquals(expected, result.judgement().level(), result.judgement().reason());
        assertEquals(
                expected == Level.CAREFUL, result.judgement().words().contains("risky"), result.judgement()::words);
    }

    /** ln(1 - 0.1) over the bits of one member: just at ten per cent. */
    @ParameterizedTest
    @CsvSource({"0.999999, GOOD", "1.000001, CAREFUL"})
    void array_rebuildIsRiskyAboveTenPerCent(double share, Level expected) {
        double bits = 12 * 8e12;
        double errors = -Math.expm1(Math.log(0.9) * share / bits);
        assertEquals(
                expected, array(Array.RaidLevel.RAID10, 4, errors).judgement().level());
    }

    private static Result nvme(int offset, int value) {
        return nvme(offset, value, null);
    }

    private static Result nvme(int offset, int value, Double critical) {
        byte[] page = new byte[512];
        page[1] = 0x36;
        page[2] = 0x01;
        page[3] = 100;
        page[4] = 10;
        page[128] = 10;
        page[offset] = (byte) value;
        String hex = java.util.HexFormat.of().formatHex(page);
        return DriveHealth.calculate(
                new DriveHealth.Input(DriveHealth.Form.NVME_PAGE, hex, "", 0, List.of(), critical));
    }

    /** 85 °C are 358 K, 0x166. */
    @ParameterizedTest
    @CsvSource({"0x65, GOOD", "0x66, BAD", "0x67, BAD"})
    void nvme_compositeAtItsCriticalTemperatureIsAnAlarm(String low, Level level) {
        assertEquals(level, nvme(1, Integer.decode(low), 85.0).judgement().level());
        assertEquals(level, nvme(1, Integer.decode(low), null).judgement().level());
    }

    @ParameterizedTest
    @CsvSource({
        "192, 0, GOOD",
        "192, 1, CAREFUL",
        "195, 1, CAREFUL",
        "196, 0, GOOD",
        "196, 1, CAREFUL",
        "199, 1, CAREFUL"
    })
    void nvme_minutesTooHotAreSaid(int offset, int value, Level level) {
        Result result = nvme(offset, value);
        assertEquals(level, result.judgement().level(), result.judgement().reason());
        if (value > 0) {
            assertTrue(
                    result.judgement().reason().contains("min"),
                    result.judgement().reason());
        }
    }

    @Test
    void nvme_minutesAtTheWarningTemperaturePointAtTheCooling() {
        assertVerdict(Level.CAREFUL, "check the cooling", nvme(192, 1));
        assertVerdict(Level.CAREFUL, "suspicious", nvme(196, 1));
        assertEquals(List.of(), nvme(192, 1).cautions());
    }

    private static Result ata(String rows) {
        return DriveHealth.calculate(new DriveHealth.Input(DriveHealth.Form.ATA_ROWS, rows, "", 5, List.of(), null));
    }

    @Test
    void ata199_pointsAtTheCable() {
        assertVerdict(Level.CAREFUL, "check the cable", ata("199 200 200 0 1"));
        assertVerdict(Level.GOOD, "no alarm", ata("199 200 200 0 0"));
        assertVerdict(Level.CAREFUL, "suspicious", ata("199 200 200 0 1\n5 100 100 10 1"));
        assertEquals(List.of(), ata("199 200 200 0 1").cautions());
    }

    @ParameterizedTest
    @CsvSource({"0, 0", "1, 1", "65535, 65535", "65536, 1", "4295032833, 3", "8590065666, 6"})
    void ata188_isUnpackedIntoItsThreeCounters(long raw, int timeouts) {
        Result result = ata("188 100 100 0 " + raw);
        String said = FigureOf.rule(result, "attribute 188 by its count").sentence();
        assertTrue(said.startsWith(timeouts + " "), said);
    }

    @Test
    void endurance_ofTwoReadingsSaysThatItHasNoInterval() {
        Result two = Endurance.calculate(
                new Endurance.Input(1000, List.of(new Endurance.Sample(0, 80), new Endurance.Sample(10, 90))));
        assertVerdict(Level.UNDECIDED, "endurance left, by two readings only", two);
        assertTrue(two.judgement().reason().contains("two readings give no interval"), two.judgement()::reason);
        assertFalse(
                two.judgement().reason().contains("perhaps only"),
                two.judgement().reason());
        Result soon = Endurance.calculate(
                new Endurance.Input(100, List.of(new Endurance.Sample(0, 80), new Endurance.Sample(10, 90))));
        assertVerdict(Level.CAREFUL, "endurance runs out soon", soon);
        Result three = Endurance.calculate(new Endurance.Input(
                1000, List.of(new Endurance.Sample(0, 80), new Endurance.Sample(5, 85), new Endurance.Sample(10, 90))));
        assertVerdict(Level.GOOD, "endurance left", three);
    }

    /** 90 days exactly are not fewer than 90. */
    @ParameterizedTest
    @CsvSource({"181, UNDECIDED", "180, UNDECIDED", "179, CAREFUL"})
    void endurance_runsOutSoonBelowNinetyDays(double rated, Level level) {
        Result result = Endurance.calculate(
                new Endurance.Input(rated, List.of(new Endurance.Sample(0, 80), new Endurance.Sample(10, 90))));
        assertEquals(level, result.judgement().level(), result.judgement().reason());
    }

    @ParameterizedTest
    @CsvSource({
        "4, GOOD, survives 1 failure",
        "2.67, GOOD, survives 1 failure",
        "2.66, CAREFUL, 'survives 1 failure, much of the capacity is lost to the smallest member'",
        "0.04, CAREFUL, 'survives 1 failure, much of the capacity is lost to the smallest member'"
    })
    void array_ofUnlikeMembersSaysWhatIsLost(double smallest, Level level, String words) {
        assertVerdict(level, words, Array.calculate(array(smallest)));
    }

    @Test
    void array_ofAMemberInAnotherUnit_isAskedAbout() {
        Invalid asked = assertThrows(Invalid.class, () -> array(0.0399));
        FigureOf.names(asked, "members[1]");
        assertTrue(asked.getMessage().contains("GB?"), asked.getMessage());
    }

    private static Array.Input array(double smallest) {
        List<Double> members = List.of(4.0, smallest, 4.0);
        return new Array.Input(Array.RaidLevel.RAID5, members, 150, 100, 1e-17, 1_200_000, 24);
    }
}
