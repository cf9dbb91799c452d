package org.benchtrail.platform.database;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
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
import java.util.Set;
import org.benchtrail.platform.LastingPort;

/**
 * Two real PostgreSQL of this machine, each at an address that stays: what the first has committed the second has, until the first is
 * lost and the second takes over. Then a new second one is made of it in the place of the lost one, as often as one likes.
 */
public final class ReplicatedDatabase implements AutoCloseable {
    private static final String STANDBY = "benchtrail_standby";
    private static final int TRIES = 300;

    /** Of a folder that is being worked in these are another cluster's own (PostgreSQL's manual, making a base backup). */
    private static final Set<String> EMPTY_IN_A_COPY = Set.of(
            "pg_wal",
            "pg_replslot",
            "pg_dynshmem",
            "pg_notify",
            "pg_serial",
            "pg_snapshots",
            "pg_stat_tmp",
            "pg_subtrans");

    private One primary;
    private One other;
    private final RolePasswords passwords;

    private ReplicatedDatabase(One primary, One other, RolePasswords passwords) {
        this.primary = primary;
        this.other = other;
        this.passwords = passwords;
    }

    /** One cluster and the port where it listens. */
    private record One(DataFolder folder, Postmaster postmaster, int port) {
        private static One in(Path path, int port) throws IOException {
            DataFolder folder = DataFolder.open(path);
            return new One(folder, new Postmaster(folder, PostgresTools.of(folder, sentence -> {})), port);
        }

        private void start() throws IOException {
            postmaster.endOrphan(sentence -> {});
            postmaster.start(() -> port, sentence -> {});
        }

        private List<ProcessHandle> processes() {
            return new ClusterProcesses(folder).all();
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
        ReplicatedDatabase both = new ReplicatedDatabase(
                One.in(first, LastingPort.free()), One.in(second, LastingPort.free()), RolePasswords.of(made));
        both.primary.start();
        both.follow();
        return both;
    }

    /** The variables that a server on this database needs: both addresses, of which it takes the one that may be written to. */
    public Map<String, String> environment() {
        return new HashMap<>(Map.of(
                "BENCHTRAIL_DATABASE_URL",
                "jdbc:postgresql://127.0.0.1:" + primary.port + ",127.0.0.1:" + other.port + "/"
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

    /** The first is killed, and the second told to take over; it is the first from now on. */
    public void failOver() throws SQLException {
        kill(primary.processes());
        One lost = primary;
        primary = other;
        other = lost;
        administer("select pg_promote()");
    }

    /** Makes a new second one of the first, in the place of the lost one; returns once every commit waits for it. */
    public void follow() throws Exception {
        if (administer("select 1 from pg_replication_slots").isEmpty()) {
            administer("select pg_create_physical_replication_slot('" + STANDBY + "', true)");
        }
        if (other.folder.hasCluster()) {
            OwnerOnly.deleteTree(other.folder.cluster());
        }
        try (Connection copying = connect(passwords.superuser(), "postgres");
                Statement statement = copying.createStatement()) {
            ask(statement, "select pg_backup_start('a new second one', true)");
            copy(primary.folder.cluster(), other.folder.cluster());
            String label = ask(statement, "select labelfile from pg_backup_stop(false)")
                    .get(0);
            Files.writeString(other.folder.cluster().resolve("backup_label"), label);
        }
        Files.createFile(other.folder.cluster().resolve("standby.signal"));
        Files.writeString(
                other.folder.cluster().resolve("postgresql.auto.conf"),
                "primary_conninfo = 'host=127.0.0.1 port=" + primary.port + " user="
                        + passwords.superuser().user() + " password="
                        + passwords.superuser().password() + " application_name=" + STANDBY + "'\nprimary_slot_name = '"
                        + STANDBY + "'\n",
                StandardOpenOption.APPEND);
        other.start();
        administer("alter system set synchronous_standby_names = '" + STANDBY + "'");
        administer("select pg_reload_conf()");
        awaitFollowing();
    }

    /** As {@link #follow()}, in another folder from now on; answers with the one it had. */
    public Path follow(Path folder) throws Exception {
        other.postmaster.stop(Duration.ZERO, sentence -> {});
        Path before = other.folder.path();
        other = One.in(folder, other.port);
        follow();
        return before;
    }

    /** Returns once the first says of the second that every commit waits for it. */
    private void awaitFollowing() throws SQLException, InterruptedException {
        for (int i = 0;
                !administer("select sync_state from pg_stat_replication").equals(List.of("sync"));
                i++) {
            if (i == TRIES) {
                throw new AssertionError("the second does not follow");
            }
            Thread.sleep(100);
        }
    }

    private static void copy(Path from, Path to) throws IOException {
        Files.walkFileTree(from, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes is) throws IOException {
                Files.copy(folder, to.resolve(from.relativize(folder)), StandardCopyOption.COPY_ATTRIBUTES);
                boolean leftEmpty = from.equals(folder.getParent())
                        && EMPTY_IN_A_COPY.contains(from.relativize(folder).toString());
                return leftEmpty ? FileVisitResult.SKIP_SUBTREE : FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes is) throws IOException {
                if (!file.getFileName().toString().startsWith("postmaster.")) {
                    Files.copy(file, to.resolve(from.relativize(file)), StandardCopyOption.COPY_ATTRIBUTES);
                }
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFileFailed(Path file, IOException why) throws IOException {
                if (why instanceof NoSuchFileException) {
                    return FileVisitResult.CONTINUE;
                }
                throw why;
            }
        });
    }

    /** kill -9 of the first's postmaster, and its start again by whoever watches it; the second follows again. */
    public void killPostmaster() throws Exception {
        kill(List.of(new ClusterProcesses(primary.folder).postmaster().orElseThrow()));
        startAgain();
    }

    /** Starts the first where it was; returns once the second follows again. */
    public void startAgain() throws Exception {
        primary.start();
        awaitFollowing();
    }

    /** Whether the first still has a postmaster. */
    public boolean runs() {
        return primary.postmaster.runs();
    }

    /** kill -9 of one process of the first that serves a server; the postmaster then ends all others and recovers. */
    public void killBackend() throws SQLException {
        List<String> serving = administer("select pid from pg_stat_activity where usename = '"
                + passwords.server().user() + "' order by random() limit 1");
        kill(List.of(ProcessHandle.of(Long.parseLong(serving.get(0))).orElseThrow()));
    }

    /** Stops all processes of the first where they are (SIGSTOP), without ending them. */
    public void freeze() throws IOException, InterruptedException {
        signal("-STOP");
    }

    /** Lets them go on (SIGCONT). */
    public void thaw() throws IOException, InterruptedException {
        signal("-CONT");
    }

    private void signal(String which) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of("kill", which));
        primary.processes().forEach(process -> command.add(Long.toString(process.pid())));
        int code = new ProcessBuilder(command).inheritIO().start().waitFor();
        if (code != 0) {
            throw new IOException("kill " + which + " ended with " + code);
        }
    }

    private static void kill(List<ProcessHandle> processes) {
        processes.forEach(ProcessHandle::destroyForcibly);
        processes.forEach(process -> process.onExit().join());
    }

    /** What the owner reads from the first. */
    public List<String> ask(String question) throws SQLException {
        try (Connection connection = connect(passwords.owner(), EmbeddedDatabase.DATABASE);
                Statement statement = connection.createStatement()) {
            return ask(statement, question);
        }
    }

    /** What the superuser does to the first, or reads of it. */
    private List<String> administer(String sql) throws SQLException {
        try (Connection connection = connect(passwords.superuser(), "postgres");
                Statement statement = connection.createStatement()) {
            return ask(statement, sql);
        }
    }

    private Connection connect(Credentials by, String database) throws SQLException {
        return DriverManager.getConnection(Roles.url(primary.port, database), by.user(), by.password());
    }

    private static List<String> ask(Statement statement, String sql) throws SQLException {
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

    @Override
    public void close() throws IOException {
        other.postmaster.stop(Duration.ZERO, sentence -> {});
        primary.postmaster.stop(Duration.ZERO, sentence -> {});
    }
}
