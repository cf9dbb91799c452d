package org.benchtrail.core.integrity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TilePathTest {
    @ParameterizedTest
    @CsvSource({
        "0, 0, 256, tile/0/000",
        "0, 272, 256, tile/0/272",
        "0, 273, 112, tile/0/273.p/112",
        "1, 1000, 256, tile/1/x001/000",
        "0, 1234067, 1, tile/0/x001/x234/067.p/1",
        "-1, 273, 112, tile/entries/273.p/112"
    })
    void aTile_hasOneName(int level, long n, int width, String path) {
        assertEquals(path, new TilePath(level, n, width).toString());
        assertEquals(Optional.of(new TilePath(level, n, width)), TilePath.parse(path));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "tile/0/x000/001",
                "tile/0/000.p/0",
                "tile/0/000.p/256",
                "tile/0/000.p/07",
                "tile/0/1",
                "tile/0/0000",
                "tile/0/001/x002",
                "tile/00/000",
                "tile/8/000",
                "tile/-1/000",
                "tile/entries/",
                "tile/0/x999/x999/x999/x999/x999/x999/999",
                "/tile/0/000",
                "tile/0/000\n",
                "tile/0/000.p/",
                ""
            })
    void anotherSpelling_isNoName(String path) {
        assertEquals(Optional.empty(), TilePath.parse(path));
    }

    @Test
    void whatIsThere_followsFromTheSize() {
        assertEquals(new TilePath(0, 273, 112), TilePath.of(0, 273, 70_000));
        assertEquals(new TilePath(1, 1, 17), TilePath.of(1, 1, 70_000));
        assertEquals(new TilePath(2, 0, 1), TilePath.of(2, 0, 70_000));
        assertEquals(new TilePath(1, 0, 1), TilePath.of(1, 0, 256));
        assertTrue(new TilePath(0, 0, 256).isWithin(256));
        assertFalse(new TilePath(0, 0, 256).isWithin(255));
        assertFalse(new TilePath(1, 0, 1).isWithin(255));
        assertFalse(new TilePath(0, 1, 1).isWithin(256));
        assertTrue(new TilePath(TilePath.ENTRIES, 1, 1).isWithin(257));
        assertFalse(new TilePath(0, Long.MAX_VALUE / 2, 256).isWithin(1000));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "leaf/1 keys 0 6ab9f1eb8f7d3388f4f9d586f66e99fd54080df2c446f0e58668b09c08a16dd0\n",
                "leaf/1 keys 01 6ab9f1eb8f7d3388f4f9d586f66e99fd54080df2c446f0e58668b09c08a16dd0\n",
                "leaf/1 keys 1 6AB9f1eb8f7d3388f4f9d586f66e99fd54080df2c446f0e58668b09c08a16dd0\n",
                "leaf/1 keys 1 6ab9f1eb8f7d3388f4f9d586f66e99fd54080df2c446f0e58668b09c08a16dd0",
                "leaf/1 keys 1 6ab9f1eb8f7d3388f4f9d586f66e99fd54080df2c446f0e58668b09c08a16dd0\n\n",
                "leaf/1  keys 1 6ab9f1eb8f7d3388f4f9d586f66e99fd54080df2c446f0e58668b09c08a16dd0\n",
                "leaf/1 Keys 1 6ab9f1eb8f7d3388f4f9d586f66e99fd54080df2c446f0e58668b09c08a16dd0\n",
                "leaf/1 keys 9999999999999999999 6ab9f1eb8f7d3388f4f9d586f66e99fd54080df2c446f0e58668b09c08a16dd0\n",
                "leaf/2 keys 1 6ab9f1eb8f7d3388f4f9d586f66e99fd54080df2c446f0e58668b09c08a16dd0\n"
            })
    void anythingElse_isNoLeaf(String line) {
        assertThrows(IllegalArgumentException.class, () -> Leaf.parse(line.getBytes(StandardCharsets.UTF_8)));
    }

    @Test
    void theLongestLeaf_isWithinItsBound() {
        Leaf longest = new Leaf("a".repeat(16) + "/" + "0".repeat(40), Long.MAX_VALUE, Hash.EMPTY_TREE);
        assertEquals(Leaf.LONGEST, longest.bytes().length);
        assertEquals(longest, Leaf.parse(longest.bytes()));
    }

    @Test
    void aBundleWithAByteTooManyOrTooFew_isNone() {
        byte[] bundle = EntryBundle.write(List.of(new Leaf("keys", 1, Hash.EMPTY_TREE)));
        assertEquals(1, EntryBundle.read(bundle).size());
        for (int n = 1; n < bundle.length; n++) {
            byte[] cut = Arrays.copyOf(bundle, n);
            assertThrows(IllegalArgumentException.class, () -> EntryBundle.read(cut));
        }
        assertThrows(IllegalArgumentException.class, () -> EntryBundle.read(Arrays.copyOf(bundle, bundle.length + 1)));
    }
}
