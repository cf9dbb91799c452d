package org.benchtrail.training;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.benchtrail.platform.database.Credentials;
import org.benchtrail.platform.database.EmbeddedDatabase;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What a mistake in a report, an export or practice itself would send, by plain SQL: the database refuses it, because forecasts and
 * practice jobs have accounts of their own. And each refusal is one that would not be there without the right that makes it.
 */
class OwnAccountsAttackTest {
    private static final String NO_RIGHT = "42501";
    private static final String SERVER = EmbeddedDatabase.SERVER;
    private static final String PRIVATE = SERVER + "_private";
    private static final String PRACTICE = SERVER + "_practice";

    private static final String OLDER = "insert into server_node (id, host, release, started, seen)"
            + " values (gen_random_uuid(), 'old', '0.0.9', now(), now())";

    @TempDir
    static Path folder;

    private static EmbeddedDatabase database;

    @BeforeAll
    static void arrange() throws SQLException {
        database = EmbeddedDatabase.start(folder.resolve("data"), line -> {});
        Flyway.configure()
                .dataSource(
                        database.jdbcUrl(),
                        database.owner().user(),
                        database.owner().password())
                .placeholders(java.util.Map.of("serverRole", SERVER))
                .load()
                .migrate();
        owner("insert into forecast.content (ticket, entry, person, round, kind, made, value, salt, reference)"
                + " values (40718, 7, 'ann', 1, 'CAUSES', now(), 'said by ann', sha256(''), '{}')");
        owner("insert into forecast.skipped (ticket, entry, person, at) values (40719, 3, 'ann', now())");
        owner("insert into forecast.seen (ticket, person, at) values (40720, 'ann', now())");
        owner("insert into forecast.reading (person, reader, at) values ('ann', 'mo', now())");
        owner("insert into recall.answer (person, item, day, at, given, hit)"
                + " values ('ann', 'one', current_date, now(), 'b', true)");
        owner("insert into recall.day (person, day, at) values ('ann', current_date, now())");
        owner("insert into coach.choice (person, code, level, at) values ('ann', '', 'PROMPT', now())");
        owner("insert into practice_job (person, family, begun, morning, commitment)"
                + " values ('ann', 'DESKTOP', now(), now(), repeat('0', 64))");
        owner("insert into practice_truth (job, seed, fault, salt) values (1, 'seed', 'DUST', sha256(''))");
        owner("insert into practice_entry (job, entry, at, actor, kind, canonical, hash, recorded)"
                + " values (1, 1, now(), 'ann', 'opened', '{}', '', now())");
        owner("insert into practice_act (job, place, act, entry, step) values (1, 1, 'look', 1, 'IDENTIFY')");
        owner("insert into practice_own (author, created) values ('mo', now())");
        owner("insert into practice_own_text (own, version, text, saved) values (1, 1, 'fault: dust', now())");
        owner("insert into practice_own_check (own, version, checked, clean, result) values (1, 1, now(), true, '{}')");
        owner("insert into practice_own_given (own, version, person, by, given) values (1, 1, 'ann', 'mo', now())");
        owner(
                "insert into coach_trial (stated_by, stated_at, question, margin, expected, correlation, occasions, people,"
                        + " jobs_each, order_seed, devices, stop_rule, left_out, analysis) values ('mo', now(), 'q', 10, 90, 5,"
                        + " 245, 8, 2, repeat('0', 64), repeat('0', 64), 's', 'l', 'a')");
        owner("insert into coach_trial_seed (trial, secret, salt) values (1, sha256('a'), sha256('b'))");
    }

    @AfterAll
    static void end() {
        database.close();
    }

    @AfterEach
    void endOlderServers() throws SQLException {
        owner("delete from server_node");
    }

    private static void owner(String sql) throws SQLException {
        run(database.owner(), List.of(sql));
    }

    /** As the server's account, in one transaction. */
    private static void server(List<String> statements) throws SQLException {
        run(database.server(), statements);
    }

    private static void run(Credentials as, List<String> statements) throws SQLException {
        try (Connection connection = DriverManager.getConnection(database.jdbcUrl(), as.user(), as.password());
                Statement statement = connection.createStatement()) {
            connection.setAutoCommit(false);
            for (String one : statements) {
                statement.execute(one);
            }
            connection.commit();
        }
    }

    private static String named(String person) {
        return "select set_config('forecast.person', '" + person + "', true), set_config('recall.person', '" + person
                + "', true), set_config('coach.person', '" + person + "', true)";
    }

    private static final List<String> OWN = List.of(
            "forecast.content",
            "forecast.seen",
            "forecast.reading",
            "forecast.skipped",
            "recall.answer",
            "recall.day",
            "coach.choice");

    private static final List<String> PRACTISED = List.of(
            "practice_job",
            "practice_truth",
            "practice_entry",
            "practice_act",
            "practice_own",
            "practice_own_text",
            "practice_own_check",
            "practice_own_given",
            "coach_trial_seed");

    private static final List<String> LIVE = List.of(
            "select title from ticket",
            "select canonical from trail_entry",
            "select name from requester",
            "select login from account",
            "insert into requester (name, contact) values ('a', 'b')",
            "insert into trail_entry (ticket, entry, at, actor, kind, canonical, hash)"
                    + " values (40718, 1, now(), 'ann', 'opened', '{}', repeat('0', 64))",
            "update ticket set title = 'other'",
            "insert into forecast_erasure (ticket, entry, at) values (40718, 7, now())",
            "insert into coach_trial_result (trial, at, people, difference, error, upper, not_worse)"
                    + " values (1, now(), 5, '0', '0', '0', true)",
            "insert into account_record (at, who, what, about, detail) values (now(), 'a', 'b', 'c', 'd')");

    /** With the account that all else is read and written with, also when it names the person as the program does. */
    static Stream<String> withTheOrdinaryAccount() {
        List<String> all = new ArrayList<>();
        Stream.concat(OWN.stream(), PRACTISED.stream()).forEach(table -> {
            all.add("select * from " + table);
            all.add("select count(*) from " + table);
            all.add("select string_agg(t::text, ' ') from " + table + " t");
        });
        all.add("delete from forecast.content where person = 'ann'");
        all.add("delete from recall.answer where person = 'ann'");
        all.add("insert into forecast.content (ticket, entry, person, round, kind, made, value, salt, reference)"
                + " values (40718, 9, 'ann', 1, 'CAUSES', now(), 'never said', sha256(''), '{}')");
        all.add("update forecast.content set value = 'other'");
        all.add("select t.fault from practice_truth t join practice_job j on j.id = t.job where j.ended is null");
        all.add("update practice_truth set fault = 'PORT'");
        all.add("update practice_job set state = 'CLOSED', ended = now()");
        all.add("insert into practice_truth (job, seed, fault, salt) values (1, 's', 'f', sha256(''))");
        all.add("insert into practice_act (job, place, act, entry, step) values (1, 9, 'a', 1, 'IDENTIFY')");
        all.add("update practice_own set withdrawn = now()");
        return all.stream();
    }

    @ParameterizedTest
    @MethodSource
    void withTheOrdinaryAccount(String attack) {
        assertRefused(attack, List.of(attack));
        assertRefused(attack, List.of(named("ann"), attack));
    }

    static Stream<List<String>> withAnAccountOfItsOwn() {
        List<List<String>> all = new ArrayList<>();
        LIVE.forEach(live -> {
            all.add(List.of(as(PRACTICE), live));
            all.add(List.of(as(PRIVATE), live));
        });
        OWN.forEach(table -> all.add(List.of(named("ann"), as(PRACTICE), "select * from " + table)));
        PRACTISED.forEach(table -> all.add(List.of(as(PRIVATE), "select * from " + table)));
        all.add(List.of(as(PRACTICE), "update practice_truth set fault = 'PORT'"));
        all.add(List.of(as(PRACTICE), "delete from practice_entry"));
        all.add(List.of(as(PRIVATE), named("ann"), "update forecast.content set value = 'other'"));
        return all.stream();
    }

    /** Practice and what is one person's own, out of the account of the other and against the live trail. */
    @ParameterizedTest
    @MethodSource
    void withAnAccountOfItsOwn(List<String> attack) {
        assertRefused(attack.toString(), attack);
    }

    private static String as(String role) {
        return "set local role " + role;
    }

    private static void assertRefused(String attack, List<String> statements) {
        SQLException refused = assertThrows(SQLException.class, () -> server(statements), attack);
        assertEquals(NO_RIGHT, refused.getSQLState(), () -> attack + ": " + refused.getMessage());
    }

    /** Whoever takes the account on and names nobody, or somebody else, sees nobody's. */
    @Test
    void withItsAccount_eachPersonApart() throws SQLException {
        for (String table : OWN) {
            assertTrue(count(table, named("ann"), as(PRIVATE)) > 0, table);
            assertEquals(0, count(table, named("bo"), as(PRIVATE)), table);
            assertEquals(0, count(table, as(PRIVATE)), table);
        }
        for (String table : PRACTISED) {
            assertTrue(count(table, as(PRACTICE)) > 0, table);
        }
    }

    /** What is given back, how it is taken away again, and the attack that it lets through. */
    private record Given(String give, String take, List<String> attack) {}

    /** The refusals above are those of these rights: each attack goes through once one is given back. */
    @Test
    void givenBack_theAttackSucceeds() throws SQLException {
        List<Given> all = List.of(
                new Given(
                        "create policy again on forecast.content to " + SERVER + " using (true)",
                        "drop policy again on forecast.content",
                        List.of("select value from forecast.content")),
                new Given(
                        "create policy again on practice_truth to " + SERVER + " using (true)",
                        "drop policy again on practice_truth",
                        List.of("select fault from practice_truth")),
                new Given(
                        "alter policy own on forecast.content to public",
                        "alter policy own on forecast.content to " + PRIVATE,
                        List.of(named("ann"), "select value from forecast.content")),
                new Given(
                        "grant select on requester to " + PRACTICE,
                        "revoke select on requester from " + PRACTICE,
                        List.of(as(PRACTICE), "select name from requester")),
                new Given(
                        "grant update (title) on ticket to " + PRACTICE,
                        "revoke update (title) on ticket from " + PRACTICE,
                        List.of(as(PRACTICE), "update ticket set title = 'other'")));
        for (Given one : all) {
            assertRefused(one.give, one.attack);
            owner(one.give);
            try {
                assertDoesNotThrow(() -> server(one.attack), one.give);
            } finally {
                owner(one.take);
            }
            assertRefused(one.take, one.attack);
        }
    }

    /** What a server of the release before sends, all of it with its one account. */
    private static List<List<String>> older() {
        return List.of(
                List.of(
                        named("ann"),
                        "insert into forecast.content (ticket, entry, person, round, kind, made, value, salt, reference)"
                                + " values (1, 1, 'ann', 1, 'CAUSES', now(), 'old', sha256(''), '{}')",
                        "select value from forecast.content where person = 'ann'",
                        "delete from forecast.content where person = 'ann' and ticket = 1 and entry = 1",
                        "insert into forecast_erasure (ticket, entry, at) values (1, 1, now())"),
                List.of(
                        named("ann"),
                        "insert into forecast.seen (ticket, person, at) values (40720, 'ann', now())"
                                + " on conflict do nothing"),
                List.of(
                        named("ann"),
                        "insert into recall.answer (person, item, day, at, given, hit)"
                                + " values ('ann', 'one', current_date, now(), 'c', true)"
                                + " on conflict (person, item, day) do nothing"),
                List.of(
                        named("ann"),
                        "insert into coach.choice (person, code, level, at) values ('ann', '', 'SILENT', now())"),
                List.of(
                        "select id from practice_job where id = 1 for update",
                        "insert into practice_act (job, place, act, entry, step) values (1, 2, 'look', 1, 'IDENTIFY')",
                        "update practice_job set state = 'OVER', ended = now() where id = 1"),
                List.of("insert into practice_job (person, family, begun, morning, commitment)"
                        + " values ('ann', 'DESKTOP', now(), now(), repeat('0', 64)) returning id"),
                List.of(
                        "select id from practice_own_given where id = 1 for update",
                        "update practice_own_given set job = 1 where id = 1"));
    }

    /** A schema is migrated while servers of the release before run: they go on, and nobody else does what they do. */
    @Test
    void olderServer_goesOn_asLongAsItRuns() throws SQLException {
        for (List<String> one : older()) {
            assertRefused(one.toString(), one);
        }
        owner(OLDER);
        for (List<String> one : older()) {
            assertDoesNotThrow(() -> server(one), one::toString);
        }
        assertEquals(0, count("forecast.content", named("bo")), "still each person apart");
        assertEquals(1, count("forecast.content", named("ann")));
        owner("update practice_job set state = 'OPEN', ended = null");
        for (String ended : List.of("ended = now()", "ended = null, seen = now() - interval '61 minutes'")) {
            owner("update server_node set " + ended);
            for (List<String> one : older()) {
                assertRefused(ended, one);
            }
        }
        owner("update server_node set seen = now(), apart = true");
        assertRefused("a server of this release", older().get(0));
    }

    /** As the server's account, after other statements of the same transaction. */
    private static int count(String table, String... before) throws SQLException {
        Credentials as = database.server();
        try (Connection connection = DriverManager.getConnection(database.jdbcUrl(), as.user(), as.password());
                Statement statement = connection.createStatement()) {
            connection.setAutoCommit(false);
            for (String one : before) {
                statement.execute(one);
            }
            try (var row = statement.executeQuery("select count(*) from " + table)) {
                assertTrue(row.next());
                return row.getInt(1);
            }
        }
    }
}
