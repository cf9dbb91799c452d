package org.benchtrail.platform.database;

import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import javax.sql.DataSource;
import org.benchtrail.platform.StartRefused;

/** The server does not run with an account that could change what may only be added to: one that owns tables, or is told all. */
@Singleton
class ServerAccount {
    private static final int FIRST = 100;

    private final DataSource database;

    ServerAccount(DataSource database) {
        this.database = database;
    }

    void atStart(@Observes @Priority(FIRST) StartupEvent start) throws SQLException {
        try (Connection connection = database.getConnection()) {
            if (ownsTables(connection)) {
                throw new StartRefused(
                        "The server's account owns tables of the database, so it could change the record: give it an account of"
                                + " its own (BENCHTRAIL_DATABASE_USER); the owner's is for the migrations alone.");
            }
        }
    }

    static boolean ownsTables(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("select rolsuper or exists (select from pg_tables t"
                        + " where t.tableowner = current_user and t.schemaname = current_schema())"
                        + " from pg_roles where rolname = current_user")) {
            return row.next() && row.getBoolean(1);
        }
    }
}
