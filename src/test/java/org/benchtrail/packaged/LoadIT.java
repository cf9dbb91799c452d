package org.benchtrail.packaged;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** {@code load FILE...}, and one data folder for one server. */
class LoadIT {
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

    private static final String GOOD_ACT =
            "      - {by: ines, kind: symptom-recorded, words: Black, observable: No picture}\n";

    /** The line after the head and the good act. */
    private static final int FAULTY_LINE = 15;

    private Path files = Path.of("");

    /** A file that has to be refused, and what has to be said of it after its name. */
    private record Faulty(Path file, String said) {}

    @Test
    void scenarios_areLoadedOnceAndFaultyOnesNotAtAll() throws Exception {
        files = PackagedJar.folder("load-files");
        Path good = scenario("good", GOOD_ACT);
        Path other = scenario("other", GOOD_ACT);
        try (ShopDatabase database = new ShopDatabase("load")) {
            // with the demo, for the files name its accounts
            PackagedJar.Ended first = load(database, List.of("benchtrail.demo=true"), List.of(good));
            assertEquals(0, first.code(), first.said());
            assertTrue(first.said().matches("(?s)\\Q" + good + "\\E: opened \\d+-\\d\\s*"), first.said());

            Map<String, Integer> before = database.counts();
            List<Faulty> faulty = faulty();
            List<Path> all = new ArrayList<>(faulty.stream().map(Faulty::file).toList());
            all.add(3, good);
            all.add(other);
            PackagedJar.Ended second = load(database, List.of(), all);
            assertEquals(1, second.code(), second.said());
            List<String> lines = second.said().lines().toList();
            assertAll(faulty.stream().map(f -> () -> requireRefused(f, second.said())));
            assertTrue(lines.contains(good + ": loaded before; nothing new"), second.said());
            assertTrue(lines.get(lines.size() - 1).startsWith(other + ": opened "), second.said());
            assertEquals(2 * faulty.size() + 2, lines.size(), "nothing else is said:\n" + second.said());
            assertEquals(withOneMoreTicket(before), database.counts(), "nothing of a faulty file is kept");
        }
    }

    @Test
    void embeddedDatabase_isForOneServerAndLoadNeedsNoPort() throws Exception {
        files = PackagedJar.folder("load-embedded-files");
        Path folder = PackagedJar.folder("load-embedded");
        Map<String, String> environment = Map.of("BENCHTRAIL_DATA", folder.toString());
        Path file = scenario("embedded", GOOD_ACT);
        try (RunningServer server = RunningServer.demo(folder)) {
            PackagedJar.Ended second = PackagedJar.run(environment, List.of());
            assertEquals(1, second.code(), second.said());
            String sentence = "uses the data folder " + folder
                    + ". Use that one, stop it first, or give this one another data folder.";
            assertTrue(second.said().contains(sentence), second.said());
            server.stop();
            assertTrue(server.database().isEmpty(), "the server left its database running");
            PackagedJar.Ended loaded = loadWithPortTaken(environment, file);
            assertEquals(0, loaded.code(), loaded.said());
            assertTrue(loaded.said().contains(file + ": opened "), loaded.said());
            assertFalse(loaded.said().contains("http://"), loaded.said());
            assertTrue(server.database().isEmpty(), "load left its database running");
        }
    }

    private static PackagedJar.Ended loadWithPortTaken(Map<String, String> environment, Path file) throws Exception {
        try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getByName("127.0.0.1"))) {
            List<String> port = List.of("quarkus.http.port=" + taken.getLocalPort());
            return PackagedJar.run(environment, port, "load", file.toString());
        }
    }

    private List<Faulty> faulty() throws IOException {
        Path none = files.resolve("none.yaml");
        Path latin = Files.write(files.resolve("latin.yaml"), "name: Bj\u00f6rn".getBytes(StandardCharsets.ISO_8859_1));
        return List.of(
                act(
                        "unknown-field",
                        "{by: ines, kind: likeness-checked, colour: red}",
                        "colour",
                        "This field is not known"),
                act(
                        "bad-kind",
                        "{by: ines, kind: symptom-guessed}",
                        "kind",
                        "There is no kind of act 'symptom-guessed'."),
                act("no-kind", "{by: ines, words: Black}", "kind", "An act needs its kind"),
                act(
                        "missing",
                        "{by: ines, kind: symptom-recorded, words: Black}",
                        "observable",
                        "Say what can be seen"),
                act(
                        "wrong",
                        "{by: ines, kind: scope-recorded, scope: SOME}",
                        "scope",
                        "'SOME' cannot stand here; choose"),
                act("nobody", "{by: nobody, kind: likeness-checked}", "by", "Nobody who works on tickets"),
                act(
                        "reference",
                        "{by: ines, kind: theory-chosen, theory: '@dust'}",
                        "theory",
                        "No earlier act of this"),
                act("refused", "{by: ines, kind: advanced}", "kind", "The method refuses this act: "),
                act(
                        "block",
                        "by: ines\n        kind: onset-recorded\n        known: true",
                        "when",
                        "Say when it began"),
                file("unknown", "name: unknown\nowner: ines\n", ", line 2, field 'owner': This field is not known"),
                file("twice", "name: twice\nname: again\n", ", line 2, field 'name': This field is here twice."),
                file("no-yaml", "name: no\ntickets: [\n", ", line 3: This is no YAML: "),
                file("empty", "# nothing\n", ", line 1: The file is empty."),
                file("itself", "name: itself\ntickets: &a\n  - *a\n", ", line 2: This contains itself."),
                file("binary", "name: x\naccounts: \u0001\n", ", line 2: Here is a character that no text has."),
                file("report", report("device: screen at the counter", "device: ''"), ", line 7, field 'device': Name"),
                file("colour", report("device: ", "colour: "), ", line 7, field 'colour': This field is not known"),
                file("category", report("DISPLAY", "TEA"), ", line 6, field 'category': 'TEA' cannot stand here"),
                // its password would be known to everybody
                file(
                        "account",
                        "name: a\naccounts:\n  - login: piet\n    name: Piet\n    roles: [SUPERVISOR]\n",
                        ", line 3, field 'login': There is no account 'piet' here"),
                new Faulty(latin, " is not text in UTF-8."),
                new Faulty(none, " is not there."));
    }

    private static void requireRefused(Faulty faulty, String said) {
        assertTrue(
                said.contains(faulty.file() + faulty.said()),
                () -> faulty.file() + faulty.said() + "\nis not said, but:\n"
                        + said.lines()
                                .filter(l -> l.startsWith(faulty.file().toString()))
                                .toList());
    }

    private static Map<String, Integer> withOneMoreTicket(Map<String, Integer> before) {
        Map<String, Integer> after = new TreeMap<>(before);
        after.merge("scenario", 1, Integer::sum);
        after.merge("ticket", 1, Integer::sum);
        after.merge("trail_entry", 2, Integer::sum);
        return after;
    }

    private static PackagedJar.Ended load(ShopDatabase database, List<String> properties, List<Path> scenarios)
            throws IOException, InterruptedException {
        List<String> words = new ArrayList<>(List.of("load"));
        scenarios.forEach(scenario -> words.add(scenario.toString()));
        return PackagedJar.run(database.environment(), properties, words.toArray(String[]::new));
    }

    private Faulty act(String name, String act, String field, String sentence) throws IOException {
        Path file = scenario(name, GOOD_ACT + "      - " + act + "\n");
        return new Faulty(file, ", line " + FAULTY_LINE + ", field '" + field + "': " + sentence);
    }

    private Faulty file(String name, String yaml, String said) throws IOException {
        return new Faulty(write(name, yaml), said);
    }

    private static String report(String part, String instead) {
        return HEAD.formatted("report").replace(part, instead) + GOOD_ACT;
    }

    private Path scenario(String name, String acts) throws IOException {
        return write(name, HEAD.formatted(name) + acts);
    }

    private Path write(String name, String yaml) throws IOException {
        return Files.writeString(files.resolve(name + ".yaml"), yaml, StandardCharsets.UTF_8);
    }
}
