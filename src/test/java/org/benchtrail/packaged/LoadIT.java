package org.benchtrail.packaged;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** {@code load FILE...} and one data folder for one server. */
class LoadIT {
    private static ShopDatabase database;
    private static Path files;

    @BeforeAll
    static void start() throws Exception {
        database = new ShopDatabase("load");
        files = PackagedJar.folder("load-files");
        // makes the demo's accounts, which the files name
        PackagedJar.Ended ended = load(List.of("benchtrail.demo=true"), scenario("first", GOOD_ACT));
        assertEquals(0, ended.code(), ended.said());
    }

    @AfterAll
    static void stop() {
        database.close();
    }

    private static final String HEAD = """
            name: %s
            tickets:
              - by: ines
                report:
                  title: Screen stays black
                  category: DISPLAY
                  device: screen at the counter
                  place: Wexcombe Printworks, counter
                  requester: P. Okon
                  contact: extension 12
                  impact: ONE_PERSON
                  urgency: HINDERED
                acts:
            """;
    private static final int HEAD_LINES = 13;

    private static final String GOOD_ACT =
            "      - {by: ines, kind: symptom-recorded, words: Black, observable: No picture}\n";

    @Test
    void sameScenarioTwice_isLoadedOnce() throws Exception {
        Path file = scenario("once", GOOD_ACT);
        int before = database.count("ticket");
        PackagedJar.Ended first = load(List.of(), file);
        assertEquals(0, first.code(), first.said());
        assertTrue(first.said().matches("(?s).*\\Q" + file + "\\E: opened \\d+-\\d.*"), first.said());
        assertEquals(before + 1, database.count("ticket"));
        PackagedJar.Ended second = load(List.of(), file);
        assertEquals(0, second.code(), second.said());
        assertTrue(second.said().contains(file + ": loaded before; nothing new"), second.said());
        assertEquals(before + 1, database.count("ticket"));
    }

    /** Line of the fault counted from the first line after the head; the act of the file stands before it. */
    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
                    unknown field in an act | {by: ines, kind: onset-recorded, known: true, when: Today, colour: red} | colour | This field is not known here.
                    unknown kind            | {by: ines, kind: symptom-guessed}                                      | kind   | There is no kind of act 'symptom-guessed'.
                    kind missing            | {by: ines, words: Black}                                               | kind   | An act needs its kind
                    field missing           | {by: ines, kind: symptom-recorded, words: Black}                       | observable | Say what can be seen
                    wrong value             | {by: ines, kind: scope-recorded, scope: SOME}                          | scope  | 'SOME' cannot stand here
                    unknown person          | {by: nobody, kind: likeness-checked}                                   | by     | Nobody who works on tickets
                    unknown reference       | {by: ines, kind: theory-chosen, theory: "@dust"}                       | theory | No earlier act of this ticket has the name '@dust'.
                    refused by the method   | {by: ines, kind: advanced}                                             | kind   | The method refuses this act:
                    """)
    void faultInAnAct_isRefusedWithFileLineAndField(String name, String act, String field, String sentence)
            throws Exception {
        Path file = scenario(name, GOOD_ACT + "      - " + act + "\n");
        requireRefused(file, file + ", line " + (HEAD_LINES + 2) + ", field '" + field + "': " + sentence);
    }

    @Test
    void faultOutsideTheActs_isRefusedWithFileLineAndField() throws Exception {
        Path unknown = file("unknown", "name: unknown\nowner: ines\n");
        requireRefused(unknown, unknown + ", line 2, field 'owner': This field is not known here.");
        Path report = file("report", HEAD.formatted("report").replace("device: screen at the counter", "device: ''"));
        requireRefused(report, report + ", line 4, field 'device'".replace("line 4", "line 7") + ": Name the device");
        Path yaml = file("yaml", "name: yaml\ntickets: [\n");
        requireRefused(yaml, yaml + ", line 3: This is no YAML:");
        Path none = files.resolve("none.yaml");
        requireRefused(none, none + " is not there.");
    }

    @Test
    void shopsServer_makesNoAccountWithAKnownPassword() throws Exception {
        Path file =
                file("account", "name: account\naccounts:\n  - {login: piet, name: Piet Doorn, roles: [SUPERVISOR]}\n");
        requireRefused(file, file + ", line 3, field 'login': There is no account 'piet' here");
    }

    @Test
    void embeddedDatabase_loadsWithoutAnAddressAndOneServerHasTheFolder() throws Exception {
        Path folder = PackagedJar.folder("load-embedded");
        Map<String, String> environment = Map.of("BENCHTRAIL_DATA", folder.toString());
        Path file = scenario("embedded", GOOD_ACT);
        try (RunningServer server = RunningServer.demo(folder)) {
            PackagedJar.Ended second = PackagedJar.run(environment, List.of());
            assertEquals(1, second.code(), second.said());
            assertTrue(
                    second.said().contains("uses the data folder " + folder + ". Use that one, stop it first, or give"),
                    second.said());
            server.stop();
            // the port that is taken for certain: this process listens on it
            try (var taken = new java.net.ServerSocket(0)) {
                PackagedJar.Ended loaded = PackagedJar.run(
                        environment, List.of("quarkus.http.port=" + taken.getLocalPort()), "load", file.toString());
                assertEquals(0, loaded.code(), loaded.said());
                assertTrue(loaded.said().contains(file + ": opened "), loaded.said());
                assertFalse(loaded.said().contains("http://"), loaded.said());
            }
            assertTrue(server.database().isEmpty(), "load left its database running");
        }
    }

    private static void requireRefused(Path file, String start) throws Exception {
        List<Integer> before = counts();
        PackagedJar.Ended ended = load(List.of(), file);
        assertEquals(1, ended.code(), ended.said());
        assertTrue(ended.said().lines().anyMatch(line -> line.startsWith(start)), start + "\nbut:\n" + ended.said());
        assertTrue(ended.said().contains("Nothing of this file was loaded."), ended.said());
        assertFalse(ended.said().contains("\tat "), ended.said());
        assertEquals(before, counts());
    }

    private static List<Integer> counts() throws SQLException {
        return List.of(
                database.count("scenario"),
                database.count("ticket"),
                database.count("trail_entry"),
                database.count("account"),
                database.count("requester"));
    }

    private static PackagedJar.Ended load(List<String> properties, Path file) throws IOException, InterruptedException {
        return PackagedJar.run(database.environment(), properties, "load", file.toString());
    }

    private static Path scenario(String name, String acts) throws IOException {
        return file(name, HEAD.formatted(name) + acts);
    }

    private static Path file(String name, String yaml) throws IOException {
        return Files.writeString(files.resolve(name.replace(' ', '-') + ".yaml"), yaml, StandardCharsets.UTF_8);
    }
}
