package org.benchtrail;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The table of what is met of the security standard says of each requirement once how it stands, and names tests that there are. */
class AsvsTest {
    private static final Path TABLE = Path.of("src/main/resources/security/asvs.tsv");

    /** Requirements of level 2 in version 4.0.3, by chapter. */
    private static final Map<Integer, Integer> IN_CHAPTER = Map.ofEntries(
            Map.entry(1, 38),
            Map.entry(2, 53),
            Map.entry(3, 18),
            Map.entry(4, 9),
            Map.entry(5, 30),
            Map.entry(6, 13),
            Map.entry(7, 12),
            Map.entry(8, 15),
            Map.entry(9, 7),
            Map.entry(10, 5),
            Map.entry(11, 8),
            Map.entry(12, 15),
            Map.entry(13, 13),
            Map.entry(14, 23));

    private record Row(String number, String state, String how, String test) {
        static Row of(String line) {
            String[] cells = line.split("\t", -1);
            assertEquals(4, cells.length, line);
            return new Row(cells[0], cells[1], cells[2], cells[3]);
        }

        int chapter() {
            return Integer.parseInt(number.substring(0, number.indexOf('.')));
        }
    }

    private static List<Row> rows() throws IOException {
        return Files.readAllLines(TABLE).stream()
                .filter(line -> !line.startsWith("#"))
                .map(Row::of)
                .toList();
    }

    @Test
    void everyRequirement_standsOnce_withHow() throws IOException {
        List<Row> rows = rows();
        assertEquals(rows.size(), rows.stream().map(Row::number).distinct().count());
        assertEquals(
                new TreeMap<>(IN_CHAPTER),
                rows.stream()
                        .collect(Collectors.groupingBy(
                                Row::chapter,
                                TreeMap::new,
                                Collectors.collectingAndThen(Collectors.toList(), List::size))));
        assertTrue(rows.stream().allMatch(row -> !row.how().isBlank()));
        Map<String, Long> counts =
                rows.stream().collect(Collectors.groupingBy(Row::state, TreeMap::new, Collectors.counting()));
        assertTrue(Set.of("met", "partly", "not", "n/a").containsAll(counts.keySet()), counts.toString());
        System.out.println("security standard, level 2: " + counts);
    }

    @Test
    void everyTestThatItNames_isThere() throws IOException {
        Set<String> there;
        try (Stream<Path> files = Files.walk(Path.of("src/test/java"))) {
            there = files.map(file -> file.getFileName().toString()).collect(Collectors.toSet());
        }
        assertEquals(
                List.of(),
                rows().stream()
                        .map(Row::test)
                        .filter(test -> !test.isEmpty() && !there.contains(test + ".java"))
                        .toList());
    }
}
