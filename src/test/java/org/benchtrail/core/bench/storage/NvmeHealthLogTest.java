package org.benchtrail.core.bench.storage;

import static org.benchtrail.core.Published.check;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.storage.NvmeHealthLog.Warning;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class NvmeHealthLogTest {
    private static final String SOURCE = "NVM Express log page 02h layout";

    private static NvmeHealthLog with(Consumer<byte[]> change) {
        byte[] page = Sectors.nvme();
        change.accept(page);
        return NvmeHealthLog.parse(page);
    }

    @Test
    void temperature_isKelvinLittleEndian() {
        NvmeHealthLog log = NvmeHealthLog.parse(Sectors.nvme());
        check(SOURCE, 310, log.compositeKelvin(), 0);
        check(SOURCE, 37, log.compositeCelsius(), 0);
    }

    @Test
    void dataUnits_areOf512000Bytes() {
        check(
                SOURCE,
                BigInteger.valueOf(632_098_304_000L),
                NvmeHealthLog.parse(Sectors.nvme()).bytesWritten());
        NvmeHealthLog log = with(page -> Sectors.number(page, 32, 8, 20_000_000));
        check(SOURCE, 10.24, log.bytesRead().doubleValue() / 1e12, 0);
    }

    @Test
    void criticalWarning_bitsAreNamed() {
        check(
                SOURCE,
                Set.of(Warning.SPARE_LOW, Warning.RELIABILITY),
                with(page -> page[0] = 5).warnings());
        assertEquals(2, with(page -> page[0] = (byte) 0x80).reservedWarningBits());
    }

    @Test
    void everyField_isReadFromItsOffset() {
        NvmeHealthLog log = NvmeHealthLog.parse(Sectors.nvme());
        check(SOURCE, BigInteger.valueOf(2_000_000), log.dataUnitsRead());
        check(SOURCE, BigInteger.valueOf(77_000_000), log.hostReads());
        check(SOURCE, BigInteger.valueOf(55_000_000), log.hostWrites());
        check(SOURCE, BigInteger.valueOf(900), log.busyMinutes());
        check(SOURCE, BigInteger.valueOf(321), log.powerCycles());
        check(SOURCE, BigInteger.valueOf(8_765), log.powerOnHours());
        check(SOURCE, BigInteger.valueOf(12), log.unsafeShutdowns());
        check(SOURCE, BigInteger.ZERO, log.mediaErrors());
        check(SOURCE, BigInteger.valueOf(40), log.errorLogEntries());
        check(SOURCE, 5, NvmeHealthLog.parse(changed(192, 5)).warningTemperatureMinutes(), 0);
        check(SOURCE, 7, NvmeHealthLog.parse(changed(196, 7)).criticalTemperatureMinutes(), 0);
        check(SOURCE, 312, log.sensorsKelvin().get(0), 0);
        assertEquals(100, log.availableSpare());
        assertEquals(10, log.spareThreshold());
        assertEquals(3, log.percentageUsed());
    }

    @Test
    void everyBitOfTheCriticalWarning_isNamed() {
        for (Warning warning : Warning.values()) {
            int bit = 1 << warning.ordinal();
            check(SOURCE, Set.of(warning), with(page -> page[0] = (byte) bit).warnings());
        }
        check(SOURCE, 6, Warning.values().length);
        check(SOURCE, Set.of(Warning.values()), with(page -> page[0] = 0x3f).warnings());
    }

    @Test
    void everySensor_isReadFromItsTwoBytes() {
        for (int sensor = 0; sensor < 8; sensor++) {
            byte[] page = Sectors.nvme();
            Arrays.fill(page, 200, 216, (byte) 0);
            Sectors.number(page, 200 + 2 * sensor, 2, 0x0150 + sensor);
            List<Integer> read = NvmeHealthLog.parse(page).sensorsKelvin();
            check(SOURCE, 0x0150 + sensor, read.get(sensor));
            check(SOURCE, 7, Collections.frequency(read, 0));
        }
    }

    @ParameterizedTest
    @CsvSource({"3, 0", "3, 100", "4, 1", "4, 100", "5, 0", "5, 99", "5, 255"})
    void everyShare_isReadFromItsByte(int offset, int value) {
        NvmeHealthLog log = with(page -> page[offset] = (byte) value);
        int read = offset == 3 ? log.availableSpare() : offset == 4 ? log.spareThreshold() : log.percentageUsed();
        check(SOURCE, value, read);
    }

    @Test
    void counterOf64Bits_isNotTakenAsNegative() {
        NvmeHealthLog log = with(page -> Sectors.number(page, 64, 8, -1L));
        assertEquals(BigInteger.ONE.shiftLeft(64).subtract(BigInteger.ONE), log.hostReads());
    }

    @Test
    void percentageUsed_mayPassHundred() {
        assertEquals(255, with(page -> page[5] = (byte) 255).percentageUsed());
    }

    static Stream<Arguments> malformed() {
        return Stream.of(
                Arguments.of("empty", new byte[0], "offset 0", "nothing"),
                Arguments.of("truncated", Arrays.copyOf(Sectors.nvme(), 511), "offset 511", "cut short"),
                Arguments.of("too long", Arrays.copyOf(Sectors.nvme(), 513), "offset 512", "too long"),
                Arguments.of("all zero", new byte[512], "offset 0", "every byte is 00"),
                Arguments.of("all ones", filled(), "offset 0", "every byte is ff"),
                Arguments.of("words exchanged", Sectors.swapped(Sectors.nvme()), "offset 1", "exchanged"),
                Arguments.of("high byte first", changed(1, 1, 0x36), "offset 1", "wrong order"),
                Arguments.of("no temperature", changed(1, 0, 0), "offset 1", "not possible"),
                Arguments.of("spare", changed(3, 101), "offset 3", "101 %"),
                Arguments.of("threshold", changed(4, 101), "offset 4", "101 %"),
                Arguments.of("counter from the other end", changed(175, 1), "offset 160", "byte order"),
                Arguments.of(
                        "counter too large",
                        changed(112, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1),
                        "offset 112",
                        "64 bits"),
                Arguments.of("power-on hours", changed(131, 1), "offset 128", "century"),
                Arguments.of("sensor", changed(202, 1), "offset 202", "not possible"));
    }

    private static byte[] filled() {
        byte[] page = new byte[512];
        Arrays.fill(page, (byte) 0xFF);
        return page;
    }

    private static byte[] changed(int offset, int... bytes) {
        byte[] page = Sectors.nvme();
        for (int i = 0; i < bytes.length; i++) {
            page[offset + i] = (byte) bytes[i];
        }
        return page;
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("malformed")
    void malformed_isRefusedWithItsOffset(String what, byte[] page, String offset, String reason) {
        Invalid refusal = assertThrows(Invalid.class, () -> NvmeHealthLog.parse(page));
        assertTrue(
                refusal.problems().stream()
                        .anyMatch(p -> p.field().equals(offset) && p.sentence().contains(reason)),
                refusal.getMessage());
    }

    @Test
    void noBytesAtAll_isRefused() {
        assertThrows(Invalid.class, () -> NvmeHealthLog.parse(null));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void fuzz_givesAValueOrInvalid(long seed) {
        Random random = new Random(seed);
        int read = 0;
        for (int i = 0; i < 4000; i++) {
            try {
                NvmeHealthLog log = NvmeHealthLog.parse(mutated(random, Sectors.nvme()));
                assertTrue(log.availableSpare() <= 100 && log.compositeKelvin() >= 173, "seed " + seed);
                read++;
            } catch (Invalid expected) {
                assertTrue(expected.problems().get(0).field().startsWith("offset "), "seed " + seed);
            }
        }
        assertTrue(read > 100, "seed " + seed + " read " + read);
    }

    static byte[] mutated(Random random, byte[] sector) {
        byte[] changed = random.nextInt(5) == 0 ? Arrays.copyOf(sector, random.nextInt(1100)) : sector.clone();
        for (int n = random.nextInt(4); n > 0 && changed.length > 0; n--) {
            changed[random.nextInt(changed.length)] = (byte) random.nextInt(256);
        }
        return changed;
    }
}
