package org.benchtrail.platform;

import io.quarkus.test.common.QuarkusTestResourceLifecycleManager;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.Map;
import java.util.Properties;
import org.benchtrail.platform.database.Credentials;
import org.benchtrail.platform.database.EmbeddedDatabase;

/** The embedded PostgreSQL, as the demo has it, in a folder of the build; kept from run to run, its tables made anew. */
public class TestDatabase implements QuarkusTestResourceLifecycleManager {
    /** What one process of the tests keeps, apart from another that runs at the same time. */
    private static final String PART = System.getProperty("tests.part", "part-1");

    private static volatile EmbeddedDatabase database;

    /** A connection as the owner of the schema, for looking at and arranging what the server itself may not touch. */
    public static Connection owner() throws SQLException {
        return connection(database.owner());
    }

    /** A connection as the role of the running server. */
    public static Connection server() throws SQLException {
        return connection(database.server());
    }

    private static Connection connection(Credentials as) throws SQLException {
        Properties settings = new Properties();
        settings.setProperty("user", as.user());
        settings.setProperty("password", as.password());
        // a test that waits for a lock which nobody gives up fails, and says so
        settings.setProperty("options", "-c lock_timeout=60s");
        return DriverManager.getConnection(database.jdbcUrl(), settings);
    }

    /** Runs one statement as the owner. */
    public static void run(String sql, Object... parameters) {
        try (Connection connection = owner();
                var statement = connection.prepareStatement(sql)) {
            for (int i = 0; i < parameters.length; i++) {
                statement.setObject(i + 1, parameters[i]);
            }
            statement.execute();
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    /** As the owner of the tables, with every guard of one of them out of the way. */
    public static void unguarded(String table, String sql, Object... parameters) {
        run("alter table " + table + " disable trigger user");
        try {
            run(sql, parameters);
        } finally {
            run("alter table " + table + " enable trigger user");
        }
    }

    /** The first value of the first row, as text, asked as the owner; empty without a row. */
    public static String one(String sql) {
        try (Connection connection = owner();
                var statement = connection.createStatement();
                var rows = statement.executeQuery(sql)) {
            return rows.next() ? rows.getString(1) : "";
        } catch (SQLException e) {
            throw new IllegalStateException(sql, e);
        }
    }

    /** Name of the folder within the build. */
    protected String folder() {
        return "test-data";
    }

    @Override
    public Map<String, String> start() {
        forgetKey();
        database = EmbeddedDatabase.start(Path.of("target", folder(), PART).toAbsolutePath(), System.out::println);
        return Map.of(
                "quarkus.datasource.jdbc.url", database.jdbcUrl(),
                "quarkus.datasource.username", database.server().user(),
                "quarkus.datasource.password", database.server().password(),
                "quarkus.flyway.username", database.owner().user(),
                "quarkus.flyway.password", database.owner().password());
    }

    /** The log begins anew with the tables, so what its key signed before counts no more. */
    private static void forgetKey() {
        try {
            Files.deleteIfExists(Path.of("target", "test-seal", PART, "key"));
            Files.deleteIfExists(Path.of("target", "test-seal", PART, "key.last"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void stop() {
        database.stop();
    }
}
