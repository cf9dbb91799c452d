package org.benchtrail.core.bench.storage;

import static org.benchtrail.core.Published.check;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.FigureOf;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.storage.DriveHealth.Form;
import org.benchtrail.core.bench.storage.DriveHealth.Input;
import org.benchtrail.core.bench.storage.DriveHealth.Sample;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DriveHealthTest {
    private static final String THRESHOLDS = "SFF-8035i r2 threshold semantics";
    private static final String FLEET =
            "Pinheiro, Weber, Barroso, USENIX FAST 2007, and Botezatu and others, KDD 2016: any count is looked into";

    private static Result rows(String text, Sample... earlier) {
        return DriveHealth.calculate(new Input(Form.ATA_ROWS, text, "", 5, List.of(earlier)));
    }

    private static Result nvme(byte[] page, Sample... earlier) {
        return DriveHealth.calculate(new Input(Form.NVME_PAGE, Sectors.hex(page), "", 0, List.of(earlier)));
    }

    private static byte[] page(int offset, int value) {
        byte[] page = Sectors.nvme();
        page[offset] = (byte) value;
        return page;
    }

    @ParameterizedTest
    @CsvSource({
        "1 63 63 63 0, failing",
        "1 64 64 63 0, no alarm",
        "1 100 100 0 0, no alarm",
        "5 100 100 10 3, suspicious",
        "1 80 63 63 0, suspicious"
    })
    void threshold_decides(String row, String words) {
        check(THRESHOLDS, words, rows(row).judgement().words());
    }

    @ParameterizedTest
    @ValueSource(ints = {5, 187, 188, 197, 198})
    void rawCountOfAWatchedAttribute_isSuspicious(int id) {
        check(FLEET, "suspicious", rows(id + " 100 100 0 1").judgement().words());
        check(FLEET, "no alarm", rows(id + " 100 100 0 0").judgement().words());
    }

    @Test
    void rawCountOfAnotherAttribute_isNoSign() {
        assertEquals("no alarm", rows("9 100 100 0 12345").judgement().words());
    }

    @Test
    void failingDrive_raisesDataLossAndBackUpFirst() {
        for (Result result :
                List.of(rows("5 4 4 10 2000"), rows("5 100 100 10 3"), nvme(page(0, 4)), nvme(page(5, 100)))) {
            assertEquals(List.of("DATA_LOSS"), result.cautions());
            assertTrue(
                    result.judgement().reason().startsWith("Back up first."),
                    result.judgement().reason());
        }
    }

    @Test
    void quietDrive_isGivenNoMoreThanNoAlarmWithTheFleetFinding() {
        for (Result result : List.of(rows("5 100 100 10 0"), nvme(Sectors.nvme()))) {
            assertEquals("no alarm", result.judgement().words());
            assertTrue(
                    result.judgement().reason().contains("56 %"),
                    result.judgement().reason());
            assertTrue(result.cautions().isEmpty());
        }
    }

    @ParameterizedTest
    @CsvSource({
        "0, 1, failing",
        "0, 4, failing",
        "0, 8, failing",
        "0, 64, suspicious",
        "3, 10, suspicious",
        "3, 11, no alarm",
        "5, 100, suspicious",
        "5, 99, no alarm",
        "160, 1, suspicious"
    })
    void nvmeByte_decides(int offset, int value, String words) {
        assertEquals(words, nvme(page(offset, value)).judgement().words());
    }

    @Test
    void nvme_figures() {
        Result result = nvme(Sectors.nvme());
        check("NVM Express log page 02h layout", 37, FigureOf.value(result, "Composite temperature"), 0);
        check("NVM Express log page 02h layout", 0.632098304, FigureOf.value(result, "Written"), 1e-12);
    }

    @Test
    void sectorAndRows_areJudgedAlike() {
        byte[] data = Sectors.attributes(new long[] {5, 1, 9, 9, 2000}, new long[] {197, 0, 100, 100, 1});
        byte[] limits = Sectors.thresholds(new int[] {5, 10}, new int[] {197, 0});
        Result sector =
                DriveHealth.calculate(new Input(Form.ATA_SECTOR, Sectors.hex(data), Sectors.hex(limits), 5, List.of()));
        assertEquals(rows("5 9 9 10 2000\n197 100 100 0 1"), sector);
    }

    @Test
    void endOfDesignLife_isToldFromImminentFailure() {
        byte[] data = Sectors.attributes(new long[] {231, 0, 9, 9, 0});
        byte[] limits = Sectors.thresholds(new int[] {231, 10});
        Result result =
                DriveHealth.calculate(new Input(Form.ATA_SECTOR, Sectors.hex(data), Sectors.hex(limits), 5, List.of()));
        assertEquals(Level.BAD, result.judgement().level());
        assertTrue(
                result.judgement().reason().contains("design life"),
                result.judgement().reason());
    }

    @Test
    void sectorWithoutThresholds_andWithoutWatchedAttributes_cannotBeJudged() {
        byte[] data = Sectors.attributes(new long[] {9, 0, 100, 100, 1});
        Result result = DriveHealth.calculate(new Input(Form.ATA_SECTOR, Sectors.hex(data), "", 5, List.of()));
        assertEquals(Level.UNDECIDED, result.judgement().level());
    }

    @Test
    void hexWithOffsetsAndLineEnds_isRead() {
        String hex = Sectors.hex(Sectors.nvme());
        String dump = "0000: " + hex.substring(0, 48) + "\n0010: " + hex.substring(48);
        assertEquals(
                "no alarm",
                DriveHealth.calculate(new Input(Form.NVME_PAGE, dump, "", 0, List.of()))
                        .judgement()
                        .words());
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "zz", "00", "0"})
    void unreadablePage_namesTheField(String text) {
        Invalid refusal = assertThrows(
                Invalid.class, () -> DriveHealth.calculate(new Input(Form.NVME_PAGE, text, "", 0, List.of())));
        assertEquals("table", refusal.problems().get(0).field());
        assertTrue(refusal.problems().get(0).sentence().startsWith("offset "));
    }

    @ParameterizedTest
    @ValueSource(strings = {"zz", "00", "5 10"})
    void unreadableThresholds_nameTheirField(String text) {
        String data = Sectors.hex(Sectors.attributes(new long[] {5, 1, 9, 9, 2000}));
        Invalid refusal = assertThrows(
                Invalid.class, () -> DriveHealth.calculate(new Input(Form.ATA_SECTOR, data, text, 5, List.of())));
        assertEquals("thresholds", refusal.problems().get(0).field());
        assertTrue(refusal.problems().get(0).sentence().startsWith("offset "));
    }

    @Test
    void trend_agreesWithALibraryRegression() {
        Result result = rows("5 80 80 10 1", new Sample(100, 100), new Sample(40, 91), new Sample(70, 97));
        SimpleRegression regression = new SimpleRegression();
        regression.addData(new double[][] {{-100, 100}, {-70, 97}, {-40, 91}, {0, 80}});
        check("Apache Commons Math SimpleRegression", regression.getSlope(), FigureOf.value(result, "Slope"), 1e-12);
        assertEquals(
                (10 - 80) / regression.getSlope(), FigureOf.value(result, "Days until the limit at this trend"), 1e-9);
        assertEquals(2, result.curves().size());
    }

    @Test
    void trendAwayFromTheLimit_givesNoDate() {
        assertFalse(FigureOf.has(rows("5 80 80 10 1", new Sample(10, 70)), "Days until the limit at this trend"));
        assertFalse(FigureOf.has(rows("5 5 5 10 1", new Sample(10, 3)), "Days until the limit at this trend"));
        assertFalse(FigureOf.has(rows("5 80 80 0 1", new Sample(10, 90)), "Days until the limit at this trend"));
    }

    @Test
    void nvmeTrend_runsTowardsHundred() {
        Result result = nvme(page(5, 90), new Sample(100, 80));
        assertEquals(100, FigureOf.value(result, "Days until the limit at this trend"), 1e-9);
    }
}
