package org.benchtrail.platform.database;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.function.IntSupplier;
import java.util.stream.Collectors;

/** The PostgreSQL server process of one data folder: starts it, stops it, and deals with what an earlier run left. */
final class Postmaster {
    static final String ADDRESS = "127.0.0.1";

    private static final byte[] LOOPBACK = {127, 0, 0, 1};

    /** Recovery after a crash may take long; it is told about meanwhile, and whoever has enough of it can interrupt. */
    private static final Duration START_LIMIT = Duration.ofHours(1);

    private static final Duration FAST_LIMIT = Duration.ofSeconds(60);
    private static final Duration IMMEDIATE_LIMIT = Duration.ofSeconds(20);
    private static final int PORT_ATTEMPTS = 5;
    private static final int TAIL_BYTES = 4000;
    private static final int TAIL_LINES = 15;
    private static final long LOG_KEPT_BYTES = 10_000_000;

    private final DataFolder folder;
    private final PostgresTools tools;
    private final ClusterProcesses processes;

    Postmaster(DataFolder folder, PostgresTools tools) {
        this.folder = folder;
        this.tools = tools;
        this.processes = new ClusterProcesses(folder);
    }

    /**
     * Ends a server that outlived its Benchtrail, and clears a postmaster.pid that would keep a new one from starting. To be
     * called with the folder's lock held: then no live Benchtrail uses that server.
     */
    void endOrphan(Progress progress) throws IOException {
        List<ProcessHandle> left = processes.all();
        if (!left.isEmpty()) {
            progress.tell("Ending a PostgreSQL that an earlier run left behind (process " + pids(left) + ") ...");
            stop(Duration.ZERO, progress);
        }
        Files.deleteIfExists(folder.postmasterPid());
    }

    /**
     * Starts the server and waits until it takes connections.
     *
     * @param ports proposes a port that is free at the moment; asked again if somebody else is quicker
     * @return the port
     */
    int start(IntSupplier ports, Progress progress) throws IOException {
        setLongLogAside();
        for (int attempt = 1; ; attempt++) {
            int port = ports.getAsInt();
            long logged = Files.size(folder.log());
            progress.tell("Starting PostgreSQL " + PostgresBinaries.VERSION + " on " + ADDRESS + ":" + port + " ...");
            PostgresTools.Outcome outcome = tools.run("Starting PostgreSQL", START_LIMIT, progress, startCommand(port));
            if (outcome.succeeded()) {
                return port;
            }
            String tail = tail(logged);
            if (attempt == PORT_ATTEMPTS || !tail.contains("could not create any TCP/IP sockets")) {
                throw new DatabaseNotStarted("PostgreSQL did not start in " + folder.path() + ". " + outcome.said()
                        + "\nThe last lines of " + folder.log() + ":\n" + tail);
            }
            progress.tell("Port " + port + " was taken meanwhile; trying another one.");
        }
    }

    /** Whether the server process is there; it may still be recovering. */
    boolean runs() {
        try {
            return processes.postmaster().isPresent();
        } catch (IOException unreadable) {
            return false;
        }
    }

    /**
     * Stops the server if it runs, and waits until all its processes have ended.
     *
     * @param grace how long connected clients may finish before they are cut off
     */
    void stop(Duration grace, Progress progress) throws IOException {
        if (!grace.isZero()) {
            ask("smart", grace, progress);
        }
        ask("fast", FAST_LIMIT, progress);
        ask("immediate", IMMEDIATE_LIMIT, progress);
        if (!processes.ended(FAST_LIMIT)) {
            throw new DatabaseNotStarted("PostgreSQL in " + folder.path() + " does not end (process "
                    + pids(processes.all()) + "). End it yourself, then start Benchtrail again.");
        }
    }

    /** The last lines of the server's log. */
    String tail() throws IOException {
        return tail(0);
    }

    /** pg_ctl trusts the process id in postmaster.pid; it is asked only while that process is known to be ours. */
    private void ask(String mode, Duration limit, Progress progress) throws IOException {
        if (processes.postmaster().isPresent()) {
            tools.run(
                    "Stopping PostgreSQL",
                    limit.plusSeconds(10),
                    progress,
                    List.of("pg_ctl", "stop", "-D", cluster(), "-m", mode, "-w", "-t", "" + limit.toSeconds()));
        }
    }

    /** On the command line, where no file and no ALTER SYSTEM can overrule it: what an acknowledged write rests on. */
    private List<String> startCommand(int port) {
        String settings = "-p " + port + " -c listen_addresses=" + ADDRESS + " -c unix_socket_directories="
                + " -c fsync=on -c synchronous_commit=on -c full_page_writes=on -c password_encryption=scram-sha-256"
                + " -c TimeZone=UTC -c log_timezone=UTC -c cluster_name=benchtrail";
        String limit = "" + START_LIMIT.toSeconds();
        return List.of(
                "pg_ctl",
                "start",
                "-D",
                cluster(),
                "-l",
                folder.log().toString(),
                "-w",
                "-s",
                "-t",
                limit,
                "-o",
                settings);
    }

    /** A port that nobody uses at the moment. */
    static int freePort() {
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getByAddress(LOOPBACK))) {
            return socket.getLocalPort();
        } catch (IOException failure) {
            throw new DatabaseNotStarted("No port on " + ADDRESS + " is free for PostgreSQL.", failure);
        }
    }

    private void setLongLogAside() throws IOException {
        Path log = folder.log();
        if (Files.exists(log) && Files.size(log) > LOG_KEPT_BYTES) {
            Path earlier = log.resolveSibling("postgres-earlier.log");
            Files.deleteIfExists(earlier);
            Files.move(log, earlier);
        }
        if (!Files.exists(log)) {
            OwnerOnly.createEmpty(log);
        }
    }

    private String tail(long from) throws IOException {
        try (RandomAccessFile log = new RandomAccessFile(folder.log().toFile(), "r")) {
            log.seek(Math.max(from, log.length() - TAIL_BYTES));
            byte[] bytes = new byte[(int) (log.length() - log.getFilePointer())];
            log.readFully(bytes);
            List<String> lines =
                    new String(bytes, StandardCharsets.UTF_8).lines().toList();
            return String.join("\n", lines.subList(Math.max(0, lines.size() - TAIL_LINES), lines.size()));
        }
    }

    private String cluster() {
        return folder.cluster().toString();
    }

    private static String pids(List<ProcessHandle> processes) {
        return processes.stream().map(p -> Long.toString(p.pid())).collect(Collectors.joining(", "));
    }
}
