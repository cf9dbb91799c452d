package org.benchtrail.platform.database;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Properties;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** One real PostgreSQL, in a folder whose name has spaces and letters beyond ASCII, put through what a shop puts it through. */
class EmbeddedDatabaseTest {
    @TempDir
    static Path temporary;

    private static Path folder;
    private static @Nullable EmbeddedDatabase running;
    private static final List<String> told = new ArrayList<>();

    @BeforeAll
    static void createOnTopOfAnInterruptedStart() throws IOException, SQLException {
        boolean unicode = "UTF-8".equals(System.getProperty("sun.jnu.encoding"));
        folder = temporary.resolve(unicode ? "Werkstatt Müller & Søn 修理" : "Werkstatt & Daten");
        OwnerOnly.createFolder(folder);
        Files.createDirectories(folder.resolve("cluster.partial-1/base"));
        Files.writeString(folder.resolve("cluster.partial-1/PG_VERSION"), "17\n");
        Files.createDirectories(folder.resolve("postgres.partial-2/bin"));
        start();
        owner("CREATE TABLE kept (row text)");
    }

    @BeforeEach
    void startIfStopped() {
        told.clear();
        if (running == null) {
            start();
        }
    }

    @AfterAll
    static void stop() {
        if (running != null) {
            running.stop();
            running = null;
        }
    }

    @Test
    void interruptedStart_leavesNothingBehind() throws IOException {
        try (Stream<Path> entries = Files.list(folder)) {
            assertEquals(
                    List.of(),
                    entries.filter(entry -> entry.toString().contains(".partial-"))
                            .toList());
        }
    }

    @Test
    void settings_keepWhatWasAcknowledged() throws SQLException {
        assertEquals("on", show("fsync"));
        assertEquals("on", show("synchronous_commit"));
        assertEquals("on", show("full_page_writes"));
        assertEquals("on", show("data_checksums"));
        assertEquals("UTF8", show("server_encoding"));
        assertEquals("UTC", show("log_timezone"));
        assertEquals(PostgresBinaries.VERSION, show("server_version"));
        assertEquals(
                "C.UTF-8",
                superuser("SELECT datlocale FROM pg_database WHERE datname = 'benchtrail' AND datlocprovider = 'b'"));
    }

    @Test
    void settings_cannotBeWeakenedFromWithin() throws SQLException {
        superuser("ALTER SYSTEM SET fsync = off");
        superuser("ALTER SYSTEM SET listen_addresses = '*'");
        stop();
        start();
        assertEquals("on", show("fsync"));
        assertEquals("127.0.0.1", show("listen_addresses"));
        superuser("ALTER SYSTEM RESET ALL");
    }

    @Test
    void connections_onlyFromThisMachineAndWithPassword() throws SQLException {
        assertEquals("scram-sha-256", show("password_encryption"));
        assertEquals("127.0.0.1", show("listen_addresses"));
        assertEquals("", superuser("SHOW unix_socket_directories"));
        assertEquals("scram-sha-256", superuser("SELECT string_agg(DISTINCT auth_method, ',') FROM pg_hba_file_rules"));
        assertEquals(
                "SCRAM-SHA-256",
                superuser("SELECT string_agg(DISTINCT split_part(rolpassword, '$', 1), ',') FROM pg_authid"
                        + " WHERE rolcanlogin"));
    }

    @Test
    void wrongPassword_isRefused() {
        Credentials wrong = new Credentials(EmbeddedDatabase.SERVER, "guess");
        SQLException refusal = assertThrows(SQLException.class, () -> connect(wrong, "benchtrail"));
        assertEquals("28P01", refusal.getSQLState(), "invalid_password in PostgreSQL's table of error codes");
    }

    @Test
    void noPassword_isRefused() {
        Properties user = new Properties();
        user.setProperty("user", EmbeddedDatabase.SERVER);
        assertThrows(
                SQLException.class, () -> DriverManager.getConnection(running().jdbcUrl(), user));
    }

    @Test
    void passwords_areLongAndDiffer() throws IOException {
        List<String> lines = Files.readAllLines(folder.resolve("database.passwords"));
        assertEquals(
                3,
                lines.stream()
                        .map(line -> line.substring(line.indexOf('=')))
                        .distinct()
                        .count());
        int base64LengthOf32Bytes = 43;
        lines.forEach(line -> assertEquals(base64LengthOf32Bytes, line.length() - line.indexOf('=') - 1));
    }

    @Test
    void credentials_doNotPrintThePassword() {
        assertFalse(running().owner().toString().contains(running().owner().password()));
    }

    @Test
    void server_mayConnectAndNothingElse() throws SQLException {
        String insufficientPrivilege = "42501";
        for (String attempt : List.of(
                "CREATE TABLE mine (x int)",
                "CREATE TEMPORARY TABLE mine (x int)",
                "CREATE SCHEMA mine",
                "SELECT * FROM kept",
                "INSERT INTO kept VALUES ('x')",
                "COPY (SELECT 1) TO PROGRAM 'true'",
                "ALTER SYSTEM SET fsync = off")) {
            SQLException refusal = assertThrows(SQLException.class, () -> server(attempt), attempt);
            assertEquals(insufficientPrivilege, refusal.getSQLState(), attempt);
        }
        owner("GRANT SELECT ON kept TO " + EmbeddedDatabase.SERVER);
        server("SELECT * FROM kept");
        owner("REVOKE SELECT ON kept FROM " + EmbeddedDatabase.SERVER);
    }

    @Test
    void owner_ownsTheDatabaseButNotTheServer() throws SQLException {
        assertEquals(
                "f",
                superuser("SELECT rolsuper OR rolcreaterole OR rolcreatedb FROM pg_roles WHERE rolname = '"
                        + EmbeddedDatabase.OWNER + "'"));
        owner("CREATE SCHEMA benchtest");
        owner("DROP SCHEMA benchtest");
        assertThrows(SQLException.class, () -> connect(running().owner(), "postgres"));
        assertThrows(SQLException.class, () -> connect(running().server(), "template1"));
    }

    @Test
    void everything_isForTheOwnerOnly() throws IOException {
        assertEquals("rwx------", permissions(folder));
        assertEquals("rw-------", permissions(folder.resolve("database.passwords")));
        try (Stream<Path> entries = Files.walk(folder)) {
            assertEquals(
                    List.of(),
                    entries.filter(entry -> !Files.isSymbolicLink(entry))
                            .filter(entry -> !permissions(entry).endsWith("------"))
                            .toList());
        }
    }

    @Test
    void restart_keepsData() throws SQLException {
        keep("before the restart");
        stop();
        start();
        assertKept("before the restart");
    }

    @Test
    void stop_secondTime_doesNothing() {
        EmbeddedDatabase database = running();
        stop();
        database.stop();
        database.close();
    }

    @Test
    void secondStart_isRefusedInThisProcessAndInAnother() throws Exception {
        for (int attempt = 1; attempt <= 2; attempt++) {
            DatabaseNotStarted refusal =
                    assertThrows(DatabaseNotStarted.class, () -> EmbeddedDatabase.start(folder, told::add));
            assertRefusedBy(ProcessHandle.current().pid(), refusal.getMessage());
        }
        // After the refusals above, for on POSIX a process loses its lock when it closes the file a second time.
        try (OtherProcess other = OtherProcess.using(folder)) {
            assertRefusedBy(ProcessHandle.current().pid(), other.said());
        }
        keep("after the refusals");
    }

    @Test
    void killedBenchtrail_leavesAnOrphanThatTheNextStartEnds() throws Exception {
        stop();
        ProcessHandle orphan;
        try (OtherProcess other = OtherProcess.using(folder)) {
            assertTrue(other.isReady());
            DatabaseNotStarted refusal = assertThrows(DatabaseNotStarted.class, EmbeddedDatabaseTest::start);
            assertRefusedBy(other.pid(), refusal.getMessage());
            orphan = postmaster();
            other.kill();
            assertTrue(runs(orphan), "PostgreSQL outlives a killed Benchtrail");
            start();
            assertFalse(runs(orphan));
            assertTrue(
                    told.stream().anyMatch(line -> line.contains("left behind") && line.contains("" + orphan.pid())));
            assertKept("by process " + other.pid());
        }
    }

    @Test
    void benchtrailThatEnds_takesPostgresWithIt() throws Exception {
        stop();
        try (OtherProcess other = OtherProcess.using(folder)) {
            assertTrue(other.isReady());
            ProcessHandle postmaster = postmaster();
            other.letEnd();
            assertFalse(runs(postmaster));
            assertTrue(Files.readString(folder.resolve("postgres.log")).endsWith("database system is shut down\n"));
        }
    }

    @Test
    void killedPostgres_recoversWhatWasCommitted() throws Exception {
        keep("before the crash");
        try (Connection open = connect(running().owner(), "benchtrail");
                Statement statement = open.createStatement()) {
            open.setAutoCommit(false);
            statement.execute("INSERT INTO kept VALUES ('never committed')");
            postmaster().destroyForcibly();
            stop();
        }
        start();
        assertKept("before the crash");
        assertEquals("0", one(running().owner(), "SELECT count(*) FROM kept WHERE row = 'never committed'"));
    }

    @Test
    void killedPostgres_supervised_comesBackByItselfAtItsPort() throws Exception {
        keep("before it came back");
        String address = running().jdbcUrl();
        List<String> givenUp = new CopyOnWriteArrayList<>();
        running().supervise(told::add, givenUp::add);
        ProcessHandle before = postmaster();
        before.destroyForcibly();
        for (int i = 0; i < 200 && !connects(); i++) {
            Thread.sleep(50);
        }
        assertEquals(List.of(), givenUp);
        assertKept("before it came back");
        assertEquals(address, running().jdbcUrl());
        assertNotEquals(before.pid(), postmaster().pid());
    }

    private static boolean connects() {
        try {
            connect(running().server(), "benchtrail").close();
            return true;
        } catch (SQLException notYet) {
            return false;
        }
    }

    @Test
    void foreignProcessWithThePidOfPostgres_isLeftAlone() throws Exception {
        Path impostor = Files.copy(Path.of("/bin/sleep"), temporary.resolve("postgres"));
        Path cluster = folder.resolve("cluster");
        // One works in the folder and is no PostgreSQL; the other is called postgres and works elsewhere.
        for (ProcessBuilder builder : List.of(
                new ProcessBuilder("/bin/sleep", "60").directory(cluster.toFile()),
                new ProcessBuilder(impostor.toString(), "60").directory(temporary.toFile()))) {
            stop();
            Process foreign = builder.start();
            try {
                Files.writeString(cluster.resolve("postmaster.pid"), foreign.pid() + "\n" + cluster + "\n");
                start();
                assertFalse(foreign.waitFor(100, TimeUnit.MILLISECONDS), "still running");
            } finally {
                foreign.destroyForcibly();
            }
        }
    }

    @Test
    void pidOfPostgresGivenToAnother_whileRunning_isNotStopped() throws Exception {
        ProcessHandle postmaster = postmaster();
        postmaster.destroyForcibly();
        Process foreign = new ProcessBuilder("/bin/sleep", "60").start();
        try {
            Files.writeString(folder.resolve("cluster/postmaster.pid"), foreign.pid() + "\n");
            stop();
            assertFalse(foreign.waitFor(100, TimeUnit.MILLISECONDS), "still running");
        } finally {
            foreign.destroyForcibly();
        }
    }

    @Test
    void alteredProgram_isFoundAndUnpackedAnew() throws Exception {
        stop();
        Path programs = binaries();
        Path library = programs.resolve("lib/libz.so.1");
        byte[] original = Files.readAllBytes(library);
        Files.write(library, new byte[] {0}, StandardOpenOption.APPEND);
        start();
        assertTrue(told.stream().anyMatch(line -> line.contains("not as they were unpacked")), told.toString());
        assertEquals(original.length, Files.size(library));
        assertEquals("rwx------", permissions(programs.resolve("bin/postgres")));
        assertTrue(Files.isSymbolicLink(programs.resolve("lib/libpq.so")));
        interruptedStart_leavesNothingBehind();
    }

    @Test
    void portTakenMeanwhile_triesAnother() throws Exception {
        stop();
        try (ServerSocket quicker = new ServerSocket(0, 1, InetAddress.getByAddress(new byte[] {127, 0, 0, 1}))) {
            Iterator<Integer> proposals =
                    List.of(quicker.getLocalPort(), Postmaster.freePort()).iterator();
            running = EmbeddedDatabase.start(folder, told::add, proposals::next);
        }
        assertTrue(told.stream().anyMatch(line -> line.contains("was taken meanwhile")), told.toString());
        assertEquals("1", one(running().server(), "SELECT 1"));
    }

    @Test
    void postgresThatDoesNotStart_saysWhyAndLetsGoOfTheFolder() throws Exception {
        stop();
        Path configuration = folder.resolve("cluster/postgresql.conf");
        String original = Files.readString(configuration);
        Files.writeString(configuration, original + "no_such_setting = 1\n");
        try {
            DatabaseNotStarted failure = assertThrows(DatabaseNotStarted.class, EmbeddedDatabaseTest::start);
            assertTrue(failure.getMessage().contains("no_such_setting"), failure.getMessage());
        } finally {
            Files.writeString(configuration, original);
        }
        start();
        assertEquals("1", one(running().server(), "SELECT 1"));
    }

    @Test
    void missingPasswordFile_isToldAndNothingIsReplaced() throws Exception {
        stop();
        Path passwords = folder.resolve("database.passwords");
        Path aside = Files.move(passwords, temporary.resolve("aside"));
        try {
            DatabaseNotStarted refusal = assertThrows(DatabaseNotStarted.class, EmbeddedDatabaseTest::start);
            assertTrue(refusal.getMessage().contains("database.passwords"), refusal.getMessage());
            assertFalse(Files.exists(passwords));
        } finally {
            Files.move(aside, passwords);
        }
    }

    private static void start() {
        running = EmbeddedDatabase.start(folder, told::add);
    }

    private static EmbeddedDatabase running() {
        EmbeddedDatabase database = running;
        if (database == null) {
            throw new IllegalStateException("the database is stopped");
        }
        return database;
    }

    private static ProcessHandle postmaster() throws IOException {
        List<String> lines = Files.readAllLines(folder.resolve("cluster/postmaster.pid"));
        return ProcessHandle.of(Long.parseLong(lines.get(0))).orElseThrow();
    }

    /** An ended process stays in the table, as a zombie (Z), until its parent collects it. */
    private static boolean runs(ProcessHandle process) throws IOException {
        Path status = Path.of("/proc", Long.toString(process.pid()), "stat");
        try {
            return process.isAlive()
                    && !(Files.exists(status) && Files.readString(status).contains(") Z "));
        } catch (NoSuchFileException ended) {
            return false;
        }
    }

    private static Path binaries() throws IOException {
        try (Stream<Path> entries = Files.list(folder)) {
            return entries.filter(entry -> Files.isDirectory(entry.resolve("bin")))
                    .findFirst()
                    .orElseThrow();
        }
    }

    private static void assertRefusedBy(long pid, String sentence) {
        assertTrue(sentence.contains("uses the data folder " + folder), sentence);
        assertTrue(sentence.contains("process " + pid), sentence);
    }

    private static void keep(String row) throws SQLException {
        owner("INSERT INTO kept VALUES ('" + row + "')");
    }

    private static void assertKept(String row) throws SQLException {
        assertEquals("1", one(running().owner(), "SELECT count(*) FROM kept WHERE row = '" + row + "'"), row);
    }

    private static String show(String setting) throws SQLException {
        return one(running().server(), "SHOW " + setting);
    }

    private static void owner(String sql) throws SQLException {
        one(running().owner(), sql);
    }

    private static void server(String sql) throws SQLException {
        one(running().server(), sql);
    }

    private static String superuser(String sql) throws SQLException {
        try {
            Properties passwords = new Properties();
            passwords.load(Files.newBufferedReader(folder.resolve("database.passwords")));
            return one(new Credentials("postgres", passwords.getProperty("postgres")), sql);
        } catch (IOException failure) {
            throw new SQLException(failure);
        }
    }

    /** The first column of the first row, or nothing. */
    private static String one(Credentials role, String sql) throws SQLException {
        try (Connection connection = connect(role, "benchtrail");
                Statement statement = connection.createStatement()) {
            if (!statement.execute(sql)) {
                return "";
            }
            ResultSet rows = statement.getResultSet();
            return rows.next() ? rows.getString(1) : "";
        }
    }

    private static Connection connect(Credentials role, String database) throws SQLException {
        String url = running().jdbcUrl().replaceFirst("/benchtrail$", "/" + database);
        return DriverManager.getConnection(url, role.user(), role.password());
    }

    private static String permissions(Path path) {
        try {
            return PosixFilePermissions.toString(Files.getPosixFilePermissions(path, LinkOption.NOFOLLOW_LINKS));
        } catch (IOException failure) {
            throw new IllegalStateException(failure);
        }
    }
}
