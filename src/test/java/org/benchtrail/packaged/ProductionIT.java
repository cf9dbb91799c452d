package org.benchtrail.packaged;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A shop's own server, on the shop's own database. */
class ProductionIT {
    private static final String PASSWORD = "first-of-all-passwords";

    /** 128 and the number of SIGTERM, as a shell tells it. */
    private static final int TOLD_TO_END = 143;

    private static ShopDatabase database;

    @BeforeAll
    static void start() throws Exception {
        database = new ShopDatabase("shop");
    }

    @AfterAll
    static void stop() {
        database.close();
    }

    @Test
    void shopsServer_hasItsFirstAdministratorAndNothingOfTheDemo() throws Exception {
        Path folder = PackagedJar.folder("shop-server");
        Map<String, String> environment = database.environment();
        environment.put("BENCHTRAIL_DATA", folder.toString());
        environment.put("BENCHTRAIL_FIRST_ADMINISTRATOR", "magda");
        environment.put("BENCHTRAIL_FIRST_ADMINISTRATOR_PASSWORD", PASSWORD);
        try (RunningServer server = RunningServer.start(folder, environment, List.of())) {
            Visitor magda = new Visitor(server.address());
            assertEquals(303, magda.signIn("magda", PASSWORD));
            for (String path : List.of("/people", "/people-events", "/me", "/queue")) {
                String to = magda.get(path).headers().firstValue("Location").orElse("");
                assertTrue(to.endsWith("/me/second-factor"), path + " led to " + to);
            }
            for (String login : List.of("ines", "tomasz", "ruth", "omar", "lena")) {
                assertEquals(401, new Visitor(server.address()).signIn(login, "benchtrail-demo"), login);
            }
            assertEquals(1, database.count("account"));
            assertEquals(0, database.count("ticket"));
            assertEquals(0, database.count("scenario"));
            assertTrue(startsNoDatabase(folder), "a database was started in " + folder);
            assertFalse(server.said().contains("benchtrail-demo"), server.said());
        }
        secondAdministrator_isNotMade(folder, environment);
    }

    private static void secondAdministrator_isNotMade(Path folder, Map<String, String> environment) throws Exception {
        environment.remove("BENCHTRAIL_FIRST_ADMINISTRATOR");
        environment.remove("BENCHTRAIL_FIRST_ADMINISTRATOR_PASSWORD");
        // what migrates is not what serves
        environment.remove("BENCHTRAIL_OWNER_USER");
        environment.remove("BENCHTRAIL_OWNER_PASSWORD");
        List<String> properties =
                List.of("benchtrail.first-administrator=nadia", "benchtrail.first-administrator-password=" + PASSWORD);
        try (TraceCollector collector = new TraceCollector()) {
            environment.putAll(collector.environment());
            try (RunningServer server = RunningServer.start(folder, environment, properties)) {
                assertEquals(
                        401, new Visitor(server.address()).signIn("nadia", PASSWORD), "somebody was there already");
                Visitor magda = new Visitor(server.address());
                assertEquals(303, magda.signIn("magda", PASSWORD));
                traces_tellPathsAndStatements_neverWhatWasAskedFor(magda, collector);
                assertEquals(TOLD_TO_END, server.stop());
            }
        }
    }

    private static void traces_tellPathsAndStatements_neverWhatWasAskedFor(Visitor magda, TraceCollector collector)
            throws Exception {
        magda.get("/queue?words=unheard-of");
        String told = collector.told("/queue");
        assertTrue(told.contains("/queue"), told);
        assertTrue(told.contains("/sign-in"), told);
        assertTrue(told.toLowerCase(Locale.ROOT).contains("select"), told);
        for (String kept : List.of("unheard-of", PASSWORD, "nadia")) {
            assertFalse(told.contains(kept), kept + " in " + told);
        }
    }

    private static boolean startsNoDatabase(Path folder) throws Exception {
        try (var inside = Files.list(folder)) {
            return inside.findAny().isEmpty();
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "BENCHTRAIL_DATABASE_USER",
                "BENCHTRAIL_DATABASE_PASSWORD",
                "BENCHTRAIL_OWNER_USER",
                "BENCHTRAIL_OWNER_PASSWORD"
            })
    void variableMissing_isNamed(String variable) throws Exception {
        Map<String, String> environment = database.environment();
        environment.remove(variable);
        PackagedJar.Ended ended = PackagedJar.run(environment, List.of());
        assertEquals(1, ended.code(), ended.said());
        assertEquals(
                "BENCHTRAIL_DATABASE_URL is set, so these have to be set as well: " + variable
                        + ". See the README, the part about a shop's own server.",
                ended.said().strip());
    }

    /** Whoever starts it wrongly reads a sentence, and no trace. */
    @ParameterizedTest
    @CsvSource({
        "BENCHTRAIL_DATABASE_PASSWORD, wrong, The database does not let this account in",
        "BENCHTRAIL_POLICY_MAINS, 110, 'Give 100, 120 or 230.'"
    })
    void wrongSetting_isToldInASentence(String variable, String value, String told) throws Exception {
        Map<String, String> environment = database.environment();
        environment.put(variable, value);
        requireSentence(environment, told);
    }

    @Test
    void ownersAccount_runsNoServer() throws Exception {
        Map<String, String> environment = database.environment();
        environment.put("BENCHTRAIL_DATABASE_USER", environment.get("BENCHTRAIL_OWNER_USER"));
        environment.put("BENCHTRAIL_DATABASE_PASSWORD", environment.get("BENCHTRAIL_OWNER_PASSWORD"));
        requireSentence(environment, "The server's account owns tables of the database");
    }

    private static void requireSentence(Map<String, String> environment, String told) throws Exception {
        PackagedJar.Ended ended = PackagedJar.run(environment, List.of());
        assertEquals(1, ended.code(), ended.said());
        assertTrue(ended.said().contains(told), ended.said());
        assertFalse(ended.said().contains("	at "), ended.said());
    }

    @Test
    void wrongNumberOfWords_isToldBeforeAnythingStarts() throws Exception {
        PackagedJar.Ended ended = PackagedJar.run(Map.of(), List.of(), "backup");
        assertEquals(2, ended.code(), ended.said());
        assertEquals("It is given so: backup FILE", ended.said().strip());
    }

    @Test
    void unknownWord_isNamedBeforeAnythingStarts() throws Exception {
        Path folder = PackagedJar.folder("unknown-word");
        PackagedJar.Ended ended =
                PackagedJar.run(Map.of("BENCHTRAIL_DATA", folder.toString()), List.of(), "lode", "file.yaml");
        assertEquals(1, ended.code(), ended.said());
        assertEquals(
                "Benchtrail does not know 'lode'. It knows: migrate, backup FILE, restore FILE, load FILE..., export FOLDER,"
                        + " restore-leaves FOLDER, verify-site, erase TICKET SUPERVISOR REASON..., verify FOLDER, witness DIR (no words start the server).",
                ended.said().strip());
        assertTrue(startsNoDatabase(folder), "a database was started in " + folder);
    }
}
