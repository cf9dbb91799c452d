package org.benchtrail.core.readin;

import static org.benchtrail.core.Published.check;
import static org.benchtrail.core.readin.Seen.assertRefused;
import static org.benchtrail.core.readin.Seen.reading;
import static org.benchtrail.core.readin.Seen.value;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.benchtrail.core.bench.storage.Sectors;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.ReadingVerdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class DrivePagesTest {
    private static final String NVME = "NVM Express log page 02h layout";
    private static final String ATA = "SFF-8035i r2, value at or below the threshold fails (clause from memory)";
    private static final String DRIVE = "NVMe drive";

    private static ReadIn nvme(Consumer<byte[]> change) {
        byte[] page = Sectors.nvme();
        change.accept(page);
        return DrivePages.nvme(page, About.NOTHING);
    }

    @Test
    void nvme_fieldsBecomeReadings() {
        ReadIn found = nvme(page -> Sectors.number(page, 192, 4, 5));
        check(NVME, 37, value(found, "temperature", DRIVE + ", composite"), 0);
        check(NVME, 39, value(found, "temperature", DRIVE + ", sensor 1"), 0);
        check(NVME, 100, value(found, "available spare", DRIVE), 0);
        check(NVME, 3, value(found, "percentage used", DRIVE), 0);
        check(NVME, 8_765, value(found, "power-on time", DRIVE), 0);
        check(NVME, 0.632098304, value(found, "data written, at most", DRIVE), 0);
        check(NVME, 1.024, value(found, "data read, at most", DRIVE), 0);
        check(NVME, 0, value(found, "media and data integrity errors", DRIVE), 0);
        check(NVME, 12, value(found, "unsafe shutdowns", DRIVE), 0);
        check(NVME, 5, value(found, "time above the warning temperature", DRIVE), 0);
        assertEquals(List.of("Temperature sensors 2, 3, 4, 5, 6, 7, 8: not fitted (0)."), found.skipped());
    }

    @Test
    void nvme_ofADriveWithoutAlarm_saysSoAndNoMore() {
        FindingRecorded said = nvme(page -> {}).findings().get(0);
        assertTrue(said.text().startsWith(DRIVE + ": Drive health, no alarm."), said.text());
        assertFalse(said.driveFailure());
    }

    @Test
    void nvme_ofAFailingDrive_isADriveFailureFinding() {
        FindingRecorded said = nvme(page -> page[0] = 0x08).findings().get(0);
        assertTrue(said.driveFailure());
        assertTrue(said.text().contains("failing. Back up first."), said.text());
        assertTrue(said.text().contains("media is read-only"), said.text());
    }

    /** Byte 3 below byte 4 is what bit 0 of the critical warning tells. */
    @ParameterizedTest
    @CsvSource({"9, 10, OUTSIDE", "10, 10, WITHIN", "11, 10, WITHIN"})
    void nvme_spareIsHeldAgainstItsThreshold(byte spare, byte threshold, ReadingVerdict verdict) {
        ReadIn found = nvme(page -> {
            page[3] = spare;
            page[4] = threshold;
        });
        check(NVME, verdict, reading(found, "available spare", DRIVE).verdict());
    }

    @ParameterizedTest
    @CsvSource({"99, WITHIN", "100, OUTSIDE", "255, OUTSIDE"})
    void nvme_lifeUsedUp_isOutside(int used, ReadingVerdict verdict) {
        ReadIn found = nvme(page -> page[5] = (byte) used);
        check(NVME, verdict, reading(found, "percentage used", DRIVE).verdict());
    }

    @Test
    void nvme_mediaErrors_areOutside_andTheDriveIsSuspicious() {
        ReadIn found = nvme(page -> page[160] = 2);
        assertEquals(
                ReadingVerdict.OUTSIDE,
                reading(found, "media and data integrity errors", DRIVE).verdict());
        assertTrue(found.findings().get(0).text().contains("suspicious"));
        assertFalse(found.findings().get(0).driveFailure());
    }

    @Test
    void nvme_counterTooLongToRecord_namesItsOffset() {
        assertRefused("offset 160", "15 digits", () -> nvme(page -> Sectors.number(page, 160, 8, -1L)));
    }

    static Stream<Arguments> malformedPages() {
        byte[] swapped = Sectors.nvme();
        swapped[1] = 0x01;
        swapped[2] = 0x36;
        byte[] cold = Sectors.nvme();
        cold[1] = 0;
        cold[2] = 0;
        return Stream.of(
                Arguments.of(new byte[0], "offset 0", "nothing"),
                Arguments.of(Arrays.copyOf(Sectors.nvme(), 511), "offset 511", "cut short"),
                Arguments.of(new byte[10_000_000], "offset 512", "too long"),
                Arguments.of(swapped, "offset 1", "wrong order"),
                Arguments.of(cold, "offset 1", "not possible"),
                Arguments.of(Sectors.swapped(Sectors.nvme()), "offset 1", "every word exchanged"));
    }

    @ParameterizedTest
    @MethodSource("malformedPages")
    void nvme_malformed_isRefusedWithItsOffset(byte[] page, String field, String reason) {
        assertRefused(field, reason, () -> DrivePages.nvme(page, About.NOTHING));
    }

    @Test
    void device_standsBeforeEveryPoint() {
        ReadIn found = DrivePages.nvme(Sectors.nvme(), new About("boot drive of the till", "", ""));
        assertEquals(
                "37",
                reading(found, "temperature", "boot drive of the till, composite")
                        .value());
        assertEquals(
                "3", reading(found, "percentage used", "boot drive of the till").value());
    }

    private static byte[] ataSectors() {
        byte[] both = Arrays.copyOf(
                Sectors.attributes(
                        new long[] {5, 0x33, 98, 97, 3},
                        new long[] {9, 0x32, 81, 81, 16_000},
                        new long[] {10, 0x33, 60, 60, 0},
                        new long[] {194, 0x22, 110, 95, 0x0000_2D00_1200_25L}),
                1024);
        byte[] limits = Sectors.thresholds(new int[] {5, 10}, new int[] {9, 0}, new int[] {10, 60}, new int[] {194, 0});
        System.arraycopy(limits, 0, both, 512, 512);
        return both;
    }

    @Test
    void ataSector_withThresholds_isReadAndJudged() {
        ReadIn found = DrivePages.ata(ataSectors(), About.NOTHING);
        assertEquals(3, value(found, "reallocated sectors", "ATA drive"));
        assertEquals(
                ReadingVerdict.OUTSIDE,
                reading(found, "reallocated sectors", "ATA drive").verdict());
        assertEquals(37, value(found, "temperature", "ATA drive, lowest byte of attribute 194"));
        check(
                ATA,
                ReadingVerdict.WITHIN,
                reading(found, "attribute 5, normalised value", "ATA drive").verdict());
        check(
                ATA,
                ReadingVerdict.OUTSIDE,
                reading(found, "attribute 10, normalised value", "ATA drive").verdict());
        assertTrue(found.findings().get(0).driveFailure(), found.findings().get(0)::text);
        assertEquals(List.of("Attribute 9: value 81, raw 16000; it never fails (threshold 0)."), found.skipped());
    }

    @Test
    void ataSector_withoutThresholds_isJudgedByCounts() {
        ReadIn found = DrivePages.ata(Arrays.copyOf(ataSectors(), 512), About.NOTHING);
        assertTrue(found.readings().stream().noneMatch(r -> r.quantity().contains("normalised")));
        assertTrue(found.findings().get(0).text().contains("suspicious"));
        assertTrue(found.skipped().get(0).contains("its threshold is not known"));
    }

    @Test
    void ataRows_sayTheSameAsTheSector() {
        ReadIn typed =
                DrivePages.ataRows("5 98 97 10 3\n9 81 81 0 16000\n10 60 60 60 0\n194 110 95 0 37", About.NOTHING);
        ReadIn sector = DrivePages.ata(ataSectors(), About.NOTHING);
        assertEquals(
                sector.readings().stream().map(ReadingRecorded::value).toList(),
                typed.readings().stream().map(ReadingRecorded::value).toList());
        assertTrue(typed.findings().get(0).driveFailure());
    }

    @Test
    void ata_malformed_isRefusedWithItsPlace() {
        byte[] cut = Arrays.copyOf(ataSectors(), 1000);
        byte[] exchanged = Sectors.swapped(ataSectors());
        byte[] badLimits = ataSectors();
        badLimits[1023]++;
        assertRefused("offset 0", "nothing", () -> DrivePages.ata(new byte[0], About.NOTHING));
        assertRefused("offset 512", "too long", () -> DrivePages.ata(cut, About.NOTHING));
        assertRefused("offset 512", "too long", () -> DrivePages.ata(new byte[10_000_000], About.NOTHING));
        assertRefused("offset 0", "exchanged", () -> DrivePages.ata(exchanged, About.NOTHING));
        assertRefused("thresholds offset 511", "checksum", () -> DrivePages.ata(badLimits, About.NOTHING));
        assertRefused("row 1", "five numbers", () -> DrivePages.ataRows("5 98 97", About.NOTHING));
        assertRefused("row 1", "no row", () -> DrivePages.ataRows("", About.NOTHING));
        assertRefused("row 1", "whole decimal", () -> DrivePages.ataRows("5 NaN 97 10 3", About.NOTHING));
        assertRefused("row 1", "outside 1 to 253", () -> DrivePages.ataRows("5 -9 97 10 3", About.NOTHING));
    }
}
