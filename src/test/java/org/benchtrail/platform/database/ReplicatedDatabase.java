package org.benchtrail.platform.database;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Two real PostgreSQL of this machine: what the first has committed the second has, until the first is killed and the second takes over. */
public final class ReplicatedDatabase implements AutoCloseable {
    private static final String STANDBY = "benchtrail_standby";
    private static final int TRIES = 100;

    private final One primary;
    private final One standby;
    private final RolePasswords passwords;

    private ReplicatedDatabase(One primary, One standby, RolePasswords passwords) {
        this.primary = primary;
        this.standby = standby;
        this.passwords = passwords;
    }

    /** One cluster and the port where it listens. */
    private record One(DataFolder folder, Postmaster postmaster, int port) {
        private static One start(Path path) throws IOException {
            DataFolder folder = DataFolder.open(path);
            folder.sweep();
            Path output = OwnerOnly.createEmpty(folder.toolOutput());
            PostgresTools tools =
                    new PostgresTools(output, PostgresBinaries.of(folder, sentence -> {}), OrdinaryUser.prefix(output));
            Postmaster postmaster = new Postmaster(folder, tools);
            return new One(folder, postmaster, postmaster.start(Postmaster::freePort, sentence -> {}));
        }
    }

    /** Starts both, in empty folders; returns once the second follows and every commit waits for it. */
    public static ReplicatedDatabase start(Path first, Path second) throws Exception {
        EmbeddedDatabase.start(first, sentence -> {}).close();
        DataFolder made = DataFolder.open(first);
        Files.writeString(
                made.cluster().resolve("pg_hba.conf"),
                "host replication all 127.0.0.1/32 scram-sha-256\n",
                StandardOpenOption.APPEND);
        if (new ProcessBuilder("cp", "-a", first + "/.", second.toString())
                        .inheritIO()
                        .start()
                        .waitFor()
                != 0) {
            throw new IOException("not copied: " + first);
        }
        RolePasswords passwords = RolePasswords.of(made);
        One primary = One.start(first);
        DataFolder copy = DataFolder.open(second);
        Files.createFile(copy.cluster().resolve("standby.signal"));
        Files.writeString(
                copy.cluster().resolve("postgresql.auto.conf"),
                "primary_conninfo = 'host=127.0.0.1 port=" + primary.port + " user="
                        + passwords.superuser().user() + " password="
                        + passwords.superuser().password() + " application_name=" + STANDBY + "'\n",
                StandardOpenOption.APPEND);
        ReplicatedDatabase both = new ReplicatedDatabase(primary, One.start(second), passwords);
        both.run(primary, "alter system set synchronous_standby_names = '" + STANDBY + "'");
        both.run(primary, "select pg_reload_conf()");
        for (int i = 0; !both.state().equals("sync"); i++) {
            if (i == TRIES) {
                throw new AssertionError("the second does not follow");
            }
            Thread.sleep(100);
        }
        return both;
    }

    /** What the first says of the second: sync once every commit waits for it. */
    private String state() throws SQLException {
        List<String> states = run(primary, "select sync_state from pg_stat_replication");
        return states.isEmpty() ? "" : states.get(0);
    }

    /** The variables that a server on this database needs: both addresses, of which it takes the one that may be written to. */
    public Map<String, String> environment() {
        return new HashMap<>(Map.of(
                "BENCHTRAIL_DATABASE_URL",
                "jdbc:postgresql://127.0.0.1:" + primary.port + ",127.0.0.1:" + standby.port + "/"
                        + EmbeddedDatabase.DATABASE + "?targetServerType=primary",
                "BENCHTRAIL_DATABASE_USER",
                passwords.server().user(),
                "BENCHTRAIL_DATABASE_PASSWORD",
                passwords.server().password(),
                "BENCHTRAIL_OWNER_USER",
                passwords.owner().user(),
                "BENCHTRAIL_OWNER_PASSWORD",
                passwords.owner().password()));
    }

    /** The first is killed, and the second told to take over. */
    public void failOver() throws SQLException {
        List<ProcessHandle> all = new ClusterProcesses(primary.folder).all();
        all.forEach(ProcessHandle::destroyForcibly);
        all.forEach(process -> process.onExit().join());
        run(standby, "select pg_promote()");
    }

    /** What the owner reads from the second. */
    public List<String> ofSecond(String question) throws SQLException {
        return run(standby, question);
    }

    private List<String> run(One one, String sql) throws SQLException {
        Credentials by = sql.contains("pg_") || sql.startsWith("alter") ? passwords.superuser() : passwords.owner();
        String database = by.equals(passwords.owner()) ? EmbeddedDatabase.DATABASE : "postgres";
        try (Connection connection =
                        DriverManager.getConnection(Roles.url(one.port, database), by.user(), by.password());
                Statement statement = connection.createStatement()) {
            List<String> rows = new ArrayList<>();
            if (statement.execute(sql)) {
                try (ResultSet found = statement.getResultSet()) {
                    while (found.next()) {
                        rows.add(found.getString(1));
                    }
                }
            }
            return rows;
        }
    }

    @Override
    public void close() throws IOException {
        standby.postmaster.stop(Duration.ZERO, sentence -> {});
        primary.postmaster.stop(Duration.ZERO, sentence -> {});
    }
}
