package org.benchtrail.platform;

import io.quarkus.test.common.QuarkusTestResourceLifecycleManager;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Properties;

/** STAND-IN, to be replaced by the embedded database: a PostgreSQL of the machine in a temporary folder. */
public class TestDatabase implements QuarkusTestResourceLifecycleManager {
    private static final String BINARIES = "/usr/lib/postgresql/15/bin/";
    private static final String OWNER = "benchtrail_owner";
    private static final String SERVER = "benchtrail_server";

    private static volatile String url = "";

    private Path folder;

    /** A connection as the owner of the schema, for looking at and arranging what the server itself may not touch. */
    public static Connection owner() throws SQLException {
        return DriverManager.getConnection(url, OWNER, "owner");
    }

    /** A connection as the role of the running server. */
    public static Connection server() throws SQLException {
        return DriverManager.getConnection(url, SERVER, "server");
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

    @Override
    public Map<String, String> start() {
        try {
            folder = Files.createTempDirectory("benchtrail-test");
            command("chown", "postgres", folder.toString());
            int port = freePort();
            asPostgres(BINARIES + "initdb", "-A", "trust", "-U", "postgres", "-E", "UTF8", "-N", folder + "/data");
            String options =
                    "-p " + port + " -c listen_addresses=127.0.0.1 -c fsync=off -c unix_socket_directories=" + folder;
            asPostgres(
                    BINARIES + "pg_ctl", "-D", folder + "/data", "-o", options, "-l", folder + "/log", "-w", "start");
            String server = "jdbc:postgresql://127.0.0.1:" + port + "/";
            arrange(server);
            url = server + "benchtrail";
            return Map.of(
                    "quarkus.datasource.jdbc.url", url,
                    "quarkus.datasource.username", SERVER,
                    "quarkus.datasource.password", "server",
                    "quarkus.flyway.username", OWNER,
                    "quarkus.flyway.password", "owner",
                    "quarkus.flyway.placeholders.serverRole", SERVER);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void stop() {
        try {
            asPostgres(BINARIES + "pg_ctl", "-D", folder + "/data", "-m", "immediate", "stop");
            command("rm", "-rf", folder.toString());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void arrange(String server) {
        Properties superuser = new Properties();
        superuser.setProperty("user", "postgres");
        try (Connection connection = DriverManager.getConnection(server + "postgres", superuser);
                Statement statement = connection.createStatement()) {
            statement.execute("create role " + OWNER + " login password 'owner'");
            statement.execute("create role " + SERVER + " login password 'server'");
            statement.execute("create database benchtrail owner " + OWNER);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    private static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        }
    }

    private static void asPostgres(String... words) throws IOException {
        List<String> all = new ArrayList<>(List.of("runuser", "-u", "postgres", "--"));
        all.addAll(Arrays.asList(words));
        command(all.toArray(String[]::new));
    }

    private static void command(String... words) throws IOException {
        try {
            Process process = new ProcessBuilder(words)
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
            if (process.waitFor() != 0) {
                throw new IOException(String.join(" ", words) + " ended with " + process.exitValue());
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException(e);
        }
    }
}
