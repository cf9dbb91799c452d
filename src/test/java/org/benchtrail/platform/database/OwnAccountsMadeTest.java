package org.benchtrail.platform.database;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Map;
import java.util.stream.Collectors;
import org.benchtrail.platform.Causes;
import org.benchtrail.platform.sql.OwnAccount;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** How a database that was made before there were accounts for forecasts and practice gets them: its own folder, and a shop's. */
class OwnAccountsMadeTest {
    private static final String BEFORE = "20261128130000";
    private static final String SERVER = EmbeddedDatabase.SERVER;

    @TempDir
    Path temporary;

    private Path folder() {
        return temporary.resolve("data");
    }

    private static Flyway schema(EmbeddedDatabase database, String target) {
        return Flyway.configure()
                .dataSource(
                        database.jdbcUrl(),
                        database.owner().user(),
                        database.owner().password())
                .placeholders(Map.of("serverRole", SERVER))
                .target(target)
                .load();
    }

    private void administer(EmbeddedDatabase database, String... statements) throws SQLException, IOException {
        run(database, RolePasswords.of(DataFolder.open(folder())).superuser(), statements);
    }

    private static void run(EmbeddedDatabase database, Credentials as, String... statements) throws SQLException {
        try (Connection connection = DriverManager.getConnection(database.jdbcUrl(), as.user(), as.password());
                Statement statement = connection.createStatement()) {
            for (String one : statements) {
                statement.execute(one);
            }
        }
    }

    private static String[] withoutThem() {
        return new String[] {
            "drop role " + OwnAccount.PRIVATE.beside(SERVER),
            "drop role " + OwnAccount.PRACTICE.beside(SERVER),
            "alter role " + SERVER + " inherit"
        };
    }

    /** What an administrator reads, without the mark of an error. */
    private static String refusal(EmbeddedDatabase database) {
        FlywayException refused = assertThrows(
                FlywayException.class, () -> schema(database, "latest").migrate());
        return Causes.of(refused).stream()
                .filter(SQLException.class::isInstance)
                .map(SQLException.class::cast)
                .filter(one -> "BT002".equals(one.getSQLState()))
                .map(one -> one.getMessage().lines().findFirst().orElse(""))
                .findFirst()
                .orElseThrow();
    }

    private static String statements(String refusal) {
        return refusal.substring(refusal.indexOf("create role"), refusal.indexOf(" Leave out"));
    }

    private static int count(EmbeddedDatabase database, String what) throws SQLException {
        Credentials as = database.server();
        try (Connection connection = DriverManager.getConnection(database.jdbcUrl(), as.user(), as.password());
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("select count(*) from " + what)) {
            row.next();
            return row.getInt(1);
        }
    }

    @Test
    void folderOfAnOlderRelease_getsThemAtItsStart_andKeepsWhatItHolds() throws Exception {
        try (EmbeddedDatabase older = EmbeddedDatabase.start(folder(), line -> {})) {
            administer(older, withoutThem());
            schema(older, BEFORE).migrate();
            run(
                    older,
                    older.server(),
                    "insert into practice_job (person, family, begun, morning, commitment)"
                            + " values ('ann', 'DESKTOP', now(), now(), repeat('0', 64))");
            assertEquals(1, count(older, "practice_job"), "as that release kept it");
        }
        try (EmbeddedDatabase now = EmbeddedDatabase.start(folder(), line -> {})) {
            schema(now, "latest").migrate();
            assertEquals(
                    "42501",
                    assertThrows(SQLException.class, () -> count(now, "practice_job"))
                            .getSQLState());
            try (Connection connection = DriverManager.getConnection(
                            now.jdbcUrl(), now.server().user(), now.server().password());
                    Statement statement = connection.createStatement()) {
                statement.execute("set role " + OwnAccount.PRACTICE.beside(SERVER));
                try (ResultSet row = statement.executeQuery("select person from practice_job")) {
                    assertTrue(row.next());
                    assertEquals("ann", row.getString(1));
                }
            }
        }
        // started once more there is nothing left to make
        EmbeddedDatabase.start(folder(), line -> {}).close();
    }

    @Test
    void shopsOwn_isToldWhatToMake_andThatIsEnough() throws Exception {
        try (EmbeddedDatabase shops = EmbeddedDatabase.start(folder(), line -> {})) {
            administer(shops, withoutThem());
            String both = refusal(shops);
            assertTrue(both.contains(": benchtrail_server_practice, benchtrail_server_private. Let"), both);
            // there, and of the server's account at every moment: as good as none
            administer(
                    shops,
                    "create role benchtrail_server_practice nologin",
                    "grant benchtrail_server_practice to " + SERVER);
            assertEquals(both, refusal(shops));
            administer(shops, statements(both).replaceFirst("create role benchtrail_server_practice [^;]*;", ""));
            assertTrue(schema(shops, "latest").migrate().success);
        }
    }

    /** The file that the README names, with what psql itself would do to it. */
    @Test
    void fileForAdministrators_makesThem() throws Exception {
        String file = Files.readAllLines(Path.of("src/main/deploy/own-accounts.sql")).stream()
                .filter(line -> !line.startsWith("\\") && !line.startsWith("--"))
                .collect(Collectors.joining("\n"));
        try (EmbeddedDatabase shops = EmbeddedDatabase.start(folder(), line -> {})) {
            administer(shops, withoutThem());
            administer(
                    shops,
                    file.replace(":\"private\"", OwnAccount.PRIVATE.beside(SERVER))
                            .replace(":\"practice\"", OwnAccount.PRACTICE.beside(SERVER))
                            .replace(":\"server\"", SERVER));
            assertTrue(schema(shops, "latest").migrate().success);
        }
    }
}
