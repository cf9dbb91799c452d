package org.benchtrail.core.bench.storage;

import static org.benchtrail.core.Published.check;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.bench.storage.AtaAttributes.Attribute;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class AtaAttributesTest {
    private static final String SOURCE = "SFF-8035i r2 threshold semantics";

    private static byte[] data() {
        return Sectors.attributes(new long[] {5, 0x33, 98, 97, 3}, new long[] {9, 0x32, 81, 81, 16_000}, new long[] {
            194, 0x22, 110, 95, 0x0000_2D00_1200_25L
        });
    }

    private static byte[] limits() {
        return Sectors.thresholds(new int[] {5, 10}, new int[] {9, 0}, new int[] {194, 0});
    }

    @Test
    void sector_isReadEntryByEntry() {
        AtaAttributes table = AtaAttributes.parse(data(), limits());
        assertEquals(new Attribute(5, true, 98, 97, 10, 3), table.find(5).orElseThrow());
        assertEquals(new Attribute(9, false, 81, 81, 0, 16_000), table.find(9).orElseThrow());
        assertEquals(0x0000_2D00_1200_25L, table.find(194).orElseThrow().raw());
        assertTrue(table.find(1).isEmpty());
    }

    @Test
    void withoutThresholdSector_thresholdsAreUnknown() {
        Attribute row = AtaAttributes.parse(data(), null).find(5).orElseThrow();
        assertEquals(-1, row.threshold());
        assertFalse(row.failing() || row.failedBefore());
    }

    @ParameterizedTest
    @CsvSource({
        "63, 63, 63, true, false",
        "64, 64, 63, false, false",
        "100, 100, 0, false, false",
        "1, 1, 0, false, false",
        "80, 63, 63, false, true"
    })
    void valueAtTheThreshold_fails(int value, int worst, int threshold, boolean failing, boolean before) {
        Attribute row = new Attribute(1, true, value, worst, threshold, 0);
        check(SOURCE, failing, row.failing());
        check(SOURCE, before, row.failedBefore());
    }

    @Test
    void typedRows_readLikeTheSector() {
        AtaAttributes table =
                AtaAttributes.parseRows("# id value worst threshold raw\n5 98 97 10 3\n\n  9\t81 81 0 16000 # hours\n");
        assertEquals(new Attribute(5, true, 98, 97, 10, 3), table.rows().get(0));
        assertEquals(16_000, table.rows().get(1).raw());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "''|row 1|no row",
                "5 98 97 10|row 1|five numbers",
                "5 98 97 10 3 7|row 1|five numbers",
                "5 98 97 10 x|row 1|whole decimal",
                "5 98 97 10 99999999999999999999|row 1|whole decimal",
                "0 98 97 10 3|row 1|id 0",
                "256 98 97 10 3|row 1|id 256",
                "5 0 97 10 3|row 1|value 0",
                "5 254 97 10 3|row 1|value 254",
                "5 98 255 10 3|row 1|worst 255",
                "5 98 97 254 3|row 1|threshold 254",
                "5 98 97 -1 3|row 1|threshold -1",
                "5 98 97 10 -3|row 1|48 bits",
                "5 98 97 10 281474976710656|row 1|48 bits"
            })
    void malformedRow_isRefusedWithItsNumber(String text, String row, String reason) {
        assertRefused(assertThrows(Invalid.class, () -> AtaAttributes.parseRows(text)), row, reason);
    }

    @Test
    void secondRowOfAnAttribute_isRefused() {
        Invalid refusal = assertThrows(Invalid.class, () -> AtaAttributes.parseRows("5 98 97 10 3\n5 98 97 10 4"));
        assertRefused(refusal, "row 2", "second time");
    }

    @Test
    void severalBadRows_areToldAtOnce() {
        Invalid refusal = assertThrows(Invalid.class, () -> AtaAttributes.parseRows("5 0 97 10 3\n9 255 254 10 4"));
        assertEquals(3, refusal.problems().size());
    }

    private static void assertRefused(Invalid refusal, String field, String reason) {
        assertTrue(
                refusal.problems().stream()
                        .anyMatch(p -> p.field().equals(field) && p.sentence().contains(reason)),
                refusal.getMessage());
    }

    static Stream<Arguments> malformedSectors() {
        byte[] wrongSum = data();
        wrongSum[511]++;
        byte[] noEntry = Sectors.sealed(header());
        return Stream.of(
                Arguments.of("empty", new byte[0], limits(), "offset 0", "nothing"),
                Arguments.of("truncated", Arrays.copyOf(data(), 256), limits(), "offset 256", "cut short"),
                Arguments.of("too long", Arrays.copyOf(data(), 1024), limits(), "offset 512", "too long"),
                Arguments.of("all zero", new byte[512], limits(), "offset 0", "every byte is 00"),
                Arguments.of("checksum", wrongSum, limits(), "offset 511", "checksum"),
                Arguments.of("words exchanged", Sectors.swapped(data()), limits(), "offset 0", "exchanged"),
                Arguments.of("no entry", noEntry, limits(), "offset 2", "no entry"),
                Arguments.of("value 0", Sectors.attributes(new long[] {5, 0, 0, 97, 3}), limits(), "row 1", "value 0"),
                Arguments.of(
                        "same id twice",
                        Sectors.attributes(new long[] {5, 0, 9, 9, 3}, new long[] {5, 0, 9, 9, 3}),
                        limits(),
                        "row 2",
                        "second time"),
                Arguments.of(
                        "threshold cut", data(), Arrays.copyOf(limits(), 100), "thresholds offset 100", "cut short"),
                Arguments.of(
                        "threshold exchanged", data(), Sectors.swapped(limits()), "thresholds offset 0", "exchanged"),
                Arguments.of("threshold 254", data(), Sectors.thresholds(new int[] {5, 254}), "row 1", "threshold 254"),
                Arguments.of(
                        "threshold twice",
                        data(),
                        Sectors.thresholds(new int[] {5, 1}, new int[] {5, 2}),
                        "thresholds offset 14",
                        "second time"));
    }

    private static byte[] header() {
        byte[] sector = new byte[512];
        sector[0] = 0x10;
        return sector;
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("malformedSectors")
    void malformedSector_isRefusedWithItsPlace(String what, byte[] data, byte[] limits, String place, String reason) {
        assertRefused(assertThrows(Invalid.class, () -> AtaAttributes.parse(data, limits)), place, reason);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void fuzz_givesAValueOrInvalid(long seed) {
        Random random = new Random(seed);
        int read = 0;
        for (int i = 0; i < 4000; i++) {
            byte[] data = NvmeHealthLogTest.mutated(random, data());
            byte[] limits = NvmeHealthLogTest.mutated(random, limits());
            if (random.nextBoolean() && data.length == 512 && limits.length == 512) {
                Sectors.sealed(data);
                Sectors.sealed(limits);
            }
            try {
                AtaAttributes table = AtaAttributes.parse(data, random.nextInt(4) == 0 ? null : limits);
                assertTrue(table.rows().stream().allMatch(r -> r.value() >= 1 && r.value() <= 253), "seed " + seed);
                read++;
            } catch (Invalid expected) {
                assertFalse(expected.problems().isEmpty(), "seed " + seed);
            }
        }
        assertTrue(read > 100, "seed " + seed + " read " + read);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void anySingleByteChanged_isNoticed(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 500; i++) {
            byte[] data = data();
            int at = random.nextInt(512);
            data[at] += (byte) (1 + random.nextInt(255));
            assertThrows(Invalid.class, () -> AtaAttributes.parse(data, null), "seed " + seed + " offset " + at);
        }
    }
}
