package org.benchtrail.platform.database;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Duration;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.IntSupplier;

/**
 * A real PostgreSQL that runs beside this process and keeps its data in a folder.
 *
 * <p>What was acknowledged is on disk, also when this process, PostgreSQL or the machine dies: the next {@link #start} on the
 * folder recovers it. The server listens on the loopback address only and asks every connection for a password; programs,
 * data and passwords lie in an owner-only folder. One process at a time uses a folder.
 *
 * <p>Two roles: {@link #owner()} owns the database and is for migrations; {@link #server()} is for the running server and may
 * do nothing but connect until migrations grant it more.
 */
public final class EmbeddedDatabase implements AutoCloseable {
    /** The database's name. */
    public static final String DATABASE = "benchtrail";
    /** The role that owns the database and its tables. */
    public static final String OWNER = "benchtrail_owner";
    /** The role of the running server; migrations grant it what it needs. */
    public static final String SERVER = "benchtrail_server";

    /** When the process is told to end, the server's own farewell runs at the same time and still needs its connections. */
    private static final Duration GRACE_AT_EXIT = Duration.ofSeconds(25);

    private static final Progress SILENT = sentence -> {};

    private final FolderLock lock;
    private final Postmaster postmaster;
    private final RolePasswords passwords;
    private final Thread atExit = new Thread(this::stopAtExit, "stop PostgreSQL");
    private int port;
    private volatile boolean stopped;

    private EmbeddedDatabase(FolderLock lock, Postmaster postmaster, RolePasswords passwords) {
        this.lock = lock;
        this.postmaster = postmaster;
        this.passwords = passwords;
    }

    /**
     * Starts the database of the folder; makes folder and database if there is none yet. Returns when both roles can connect.
     *
     * @param dataFolder its parents are made if missing; an empty or new one becomes readable by the owner only
     * @param progress hears what is being done
     * @throws DatabaseNotStarted if the folder is in use, holds a database of another major version, cannot be written, or
     *     if PostgreSQL does not start; the message says what to do
     */
    public static EmbeddedDatabase start(Path dataFolder, Progress progress) {
        return start(dataFolder, progress, Postmaster::freePort);
    }

    /** How to connect. */
    public record Access(String jdbcUrl, Credentials owner, Credentials server) {}

    /** The database of the folder if it runs already, started by another process; empty if it does not. */
    public static Optional<Access> running(Path dataFolder) {
        try {
            Path pid = dataFolder.resolve("cluster").resolve("postmaster.pid");
            if (!Files.exists(pid)) {
                return Optional.empty();
            }
            // its fourth line is the port (PostgreSQL, miscadmin.h)
            int port = Integer.parseInt(Files.readAllLines(pid).get(3).strip());
            RolePasswords passwords = RolePasswords.of(DataFolder.open(dataFolder));
            new Roles(port, passwords).check();
            return Optional.of(new Access(Roles.url(port, DATABASE), passwords.owner(), passwords.server()));
        } catch (IOException | SQLException | RuntimeException notRunning) {
            return Optional.empty();
        }
    }

    /** How this one is connected to. */
    public Access access() {
        return new Access(jdbcUrl(), owner(), server());
    }

    static EmbeddedDatabase start(Path dataFolder, Progress progress, IntSupplier ports) {
        try {
            DataFolder folder = DataFolder.open(dataFolder);
            FolderLock lock = FolderLock.take(folder);
            try {
                return startLocked(folder, lock, progress, ports);
            } catch (IOException | RuntimeException failure) {
                lock.close();
                throw failure;
            }
        } catch (AccessDeniedException denied) {
            throw new DatabaseNotStarted(
                    "Benchtrail may not use " + denied.getFile() + ". Give its account the right to"
                            + " read and write there, or choose another data folder.",
                    denied);
        } catch (IOException failure) {
            throw new DatabaseNotStarted(
                    "The data folder " + dataFolder + " cannot be used: " + failure.getMessage()
                            + ". See that the disk is there, writable and not full, or choose another data folder.",
                    failure);
        }
    }

    private static EmbeddedDatabase startLocked(
            DataFolder folder, FolderLock lock, Progress progress, IntSupplier ports) throws IOException {
        PostgresTools tools = PostgresTools.of(folder, progress);
        RolePasswords passwords = RolePasswords.of(folder);
        Postmaster postmaster = new Postmaster(folder, tools);
        postmaster.endOrphan(progress);
        if (!folder.hasCluster()) {
            Cluster.create(folder, tools, passwords.superuser(), progress);
        }
        EmbeddedDatabase database = new EmbeddedDatabase(lock, postmaster, passwords);
        database.open(ports, progress);
        return database;
    }

    /** From here on a process that ends takes PostgreSQL with it, also in the middle of starting it. */
    private void open(IntSupplier ports, Progress progress) throws IOException {
        Runtime.getRuntime().addShutdownHook(atExit);
        boolean opened = false;
        try {
            port = postmaster.start(ports, progress);
            Roles roles = new Roles(port, passwords);
            roles.ensure();
            roles.check();
            opened = true;
            progress.tell("The database is ready at " + jdbcUrl() + ".");
        } catch (SQLException failure) {
            throw new DatabaseNotStarted(
                    "PostgreSQL started but Benchtrail could not set it up: " + failure.getMessage()
                            + "\nThe last lines of its log:\n" + postmaster.tail(),
                    failure);
        } finally {
            if (!opened) {
                close();
            }
        }
    }

    /**
     * From now on PostgreSQL is started again when it dies, at most three times in ten minutes.
     *
     * @param progress hears of it
     * @param givenUp hears in a sentence why it stays down
     */
    public void supervise(Progress progress, Consumer<String> givenUp) {
        Thread watch = new Thread(
                new Supervision(postmaster, port, () -> !stopped, progress, givenUp), "watch over PostgreSQL");
        watch.setDaemon(true);
        watch.start();
    }

    /** Where both roles connect; the port is another one at each start. */
    public String jdbcUrl() {
        return Roles.url(port, DATABASE);
    }

    /** For migrations. */
    public Credentials owner() {
        return passwords.owner();
    }

    /** For the running server. */
    public Credentials server() {
        return passwords.server();
    }

    /** Stops PostgreSQL, cutting off whoever is still connected, and lets go of the folder. Does nothing the second time. */
    public void stop() {
        stop(Duration.ZERO);
        try {
            Runtime.getRuntime().removeShutdownHook(atExit);
        } catch (IllegalStateException exiting) {
            // The hook itself is under way; it finds nothing left to do.
        }
    }

    /** The same as {@link #stop()}. */
    @Override
    public void close() {
        stop();
    }

    private void stopAtExit() {
        stop(GRACE_AT_EXIT);
    }

    private synchronized void stop(Duration grace) {
        if (stopped) {
            return;
        }
        stopped = true;
        try (lock) {
            postmaster.stop(grace, SILENT);
        } catch (IOException failure) {
            throw new DatabaseNotStarted("PostgreSQL could not be stopped: " + failure.getMessage(), failure);
        }
    }
}
