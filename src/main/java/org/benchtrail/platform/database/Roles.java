package org.benchtrail.platform.database;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Properties;
import org.benchtrail.platform.sql.OwnAccount;
import org.jspecify.annotations.Nullable;
import org.postgresql.Driver;
import org.postgresql.PGConnection;

/** The roles and the database that Benchtrail needs: made where missing, at every start, so that a half-made set heals. */
final class Roles {
    private final int port;
    private final RolePasswords passwords;

    Roles(int port, RolePasswords passwords) {
        this.port = port;
        this.passwords = passwords;
    }

    static String url(int port, String database) {
        return "jdbc:postgresql://" + Postmaster.ADDRESS + ":" + port + "/" + database;
    }

    void ensure() throws SQLException {
        try (Connection connection = connect(passwords.superuser(), "postgres")) {
            ensureRole(connection, passwords.owner());
            ensureRole(connection, passwords.server());
            for (OwnAccount account : OwnAccount.values()) {
                ensureBeside(
                        connection,
                        passwords.server().user(),
                        account.beside(passwords.server().user()));
            }
            ensureDatabase(connection);
            grant(connection);
        }
    }

    /** A real connection for each role: the start has succeeded only when both can sign in. */
    void check() throws SQLException {
        connect(passwords.owner(), EmbeddedDatabase.DATABASE).close();
        connect(passwords.server(), EmbeddedDatabase.DATABASE).close();
    }

    /** Role and password in one transaction; the password leaves this process only as a salted verifier, never as text. */
    private static void ensureRole(Connection connection, Credentials role) throws SQLException {
        if (exists(connection, "SELECT 1 FROM pg_roles WHERE rolname = ?", role.user())) {
            return;
        }
        connection.setAutoCommit(false);
        execute(connection, "CREATE ROLE " + role.user() + " LOGIN NOSUPERUSER NOCREATEDB NOCREATEROLE NOREPLICATION");
        connection
                .unwrap(PGConnection.class)
                .alterUserPassword(role.user(), role.password().toCharArray(), "scram-sha-256");
        connection.commit();
        connection.setAutoCommit(true);
    }

    /**
     * An account that nobody signs in as: the server's takes it on, and has none of its rights before. From PostgreSQL 16 on a grant
     * keeps what the role said of inheriting when it was made.
     */
    private static void ensureBeside(Connection connection, String server, String account) throws SQLException {
        if (!exists(connection, "SELECT 1 FROM pg_roles WHERE rolname = ?", account)) {
            execute(
                    connection,
                    "CREATE ROLE " + account + " NOLOGIN; ALTER ROLE " + server + " NOINHERIT; GRANT " + account
                            + " TO " + server);
        }
    }

    private static void ensureDatabase(Connection connection) throws SQLException {
        if (!exists(connection, "SELECT 1 FROM pg_database WHERE datname = ?", EmbeddedDatabase.DATABASE)) {
            execute(connection, "CREATE DATABASE " + EmbeddedDatabase.DATABASE + " OWNER " + EmbeddedDatabase.OWNER);
        }
    }

    /** Everybody may connect anywhere by default; here only these two roles may, and only to their database. */
    private static void grant(Connection connection) throws SQLException {
        execute(
                connection,
                "REVOKE ALL ON DATABASE postgres, template1, " + EmbeddedDatabase.DATABASE + " FROM PUBLIC");
        execute(
                connection,
                "GRANT CONNECT ON DATABASE " + EmbeddedDatabase.DATABASE + " TO " + EmbeddedDatabase.SERVER);
    }

    private Connection connect(Credentials role, String database) throws SQLException {
        Properties properties = new Properties();
        properties.setProperty("user", role.user());
        properties.setProperty("password", role.password());
        // Asked directly: the driver manager finds drivers by class loader, and at this time there is only one
        // database.
        @Nullable Connection connection = new Driver().connect(url(port, database), properties);
        if (connection == null) {
            throw new SQLException("the driver did not take the address " + url(port, database));
        }
        return connection;
    }

    private static boolean exists(Connection connection, String query, String name) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(query)) {
            statement.setString(1, name);
            return statement.executeQuery().next();
        }
    }

    private static void execute(Connection connection, String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }
}
