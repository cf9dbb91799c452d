package org.benchtrail.packaged;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.benchtrail.platform.database.Credentials;
import org.benchtrail.platform.database.EmbeddedDatabase;

/** The database that a shop has already: run by this test's process, so that a server that uses it needs to start none. */
final class ShopDatabase implements AutoCloseable {
    private final EmbeddedDatabase database;

    ShopDatabase(String folder) throws IOException {
        this(PackagedJar.folder(folder));
    }

    private ShopDatabase(Path folder) {
        database = EmbeddedDatabase.start(folder, sentence -> {});
    }

    /** The one in that folder of the build, with what it held when it was closed. */
    static ShopDatabase again(String folder) {
        return new ShopDatabase(PackagedJar.place(folder));
    }

    EmbeddedDatabase.Access access() {
        return database.access();
    }

    /** A connection of its owner. */
    Connection owner() throws SQLException {
        Credentials owner = database.owner();
        return DriverManager.getConnection(database.jdbcUrl(), owner.user(), owner.password());
    }

    /** The variables that a server on this database needs. */
    Map<String, String> environment() {
        Credentials server = database.server();
        Credentials owner = database.owner();
        return new HashMap<>(Map.of(
                "BENCHTRAIL_DATABASE_URL", database.jdbcUrl(),
                "BENCHTRAIL_DATABASE_USER", server.user(),
                "BENCHTRAIL_DATABASE_PASSWORD", server.password(),
                "BENCHTRAIL_OWNER_USER", owner.user(),
                "BENCHTRAIL_OWNER_PASSWORD", owner.password()));
    }

    /** How many rows a table has. */
    int count(String table) throws SQLException {
        return Integer.parseInt(rows("select count(*) from " + table).get(0).get(0));
    }

    /** What its owner reads, as text; nothing may be null. */
    List<List<String>> rows(String question) throws SQLException {
        try (Connection connection = owner();
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(question)) {
            List<List<String>> all = new ArrayList<>();
            while (rows.next()) {
                List<String> row = new ArrayList<>();
                for (int i = 1; i <= rows.getMetaData().getColumnCount(); i++) {
                    row.add(rows.getString(i));
                }
                all.add(row);
            }
            return all;
        }
    }

    /** How many rows there are, by table. */
    Map<String, Integer> counts() throws SQLException {
        Map<String, Integer> counts = new TreeMap<>();
        for (String table : List.of("scenario", "ticket", "trail_entry", "account", "requester")) {
            counts.put(table, count(table));
        }
        return counts;
    }

    @Override
    public void close() {
        database.stop();
    }
}
