package org.benchtrail.packaged;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.benchtrail.platform.LastingPort;

/** The packaged server as a process of its own, on a free port. Closing it leaves no process behind, its database's neither. */
final class RunningServer implements AutoCloseable {
    private static final Duration START_LIMIT = Duration.ofSeconds(Long.getLong("start.seconds", 120));
    private static final int STOP_LIMIT_SECONDS = 60;

    private final Process process;
    private final Path folder;
    private final Path log;
    private final URI address;

    private RunningServer(Process process, Path folder, Path log, URI address) {
        this.process = process;
        this.folder = folder;
        this.log = log;
        this.address = address;
    }

    /** The demo on a data folder of its own; returns when it answers. */
    static RunningServer demo(Path folder) throws IOException, InterruptedException {
        return start(folder, Map.of("BENCHTRAIL_DATA", folder.toString()), List.of());
    }

    /** Started with these settings; returns when it answers. */
    static RunningServer start(Path folder, Map<String, String> environment, List<String> properties)
            throws IOException, InterruptedException {
        return start(PackagedJar.built(), LastingPort.free(), folder, environment, properties);
    }

    /** The program of any build at a known address. */
    static RunningServer start(
            Path jar, int port, Path folder, Map<String, String> environment, List<String> properties)
            throws IOException, InterruptedException {
        List<String> all = new ArrayList<>(properties);
        all.add("quarkus.http.port=" + port);
        Path log = folder.resolveSibling(folder.getFileName() + ".log");
        Process process = PackagedJar.start(jar, environment, all, log);
        RunningServer server = new RunningServer(process, folder, log, URI.create("http://127.0.0.1:" + port));
        boolean ready = false;
        try {
            ready = server.becomesReady();
        } finally {
            if (!ready) {
                server.close();
            }
        }
        if (!ready) {
            throw new AssertionError("the server did not start; it said:\n" + server.said());
        }
        return server;
    }

    URI address() {
        return address;
    }

    /** Where it tells whether it is ready. */
    int managementPort() {
        return address.getPort() + 1000;
    }

    String said() throws IOException {
        return Files.readString(log, StandardCharsets.UTF_8);
    }

    /** kill -9 of the server; its PostgreSQL is left an orphan. */
    void kill() throws InterruptedException {
        process.destroyForcibly().waitFor();
    }

    /** kill -9 of its PostgreSQL, the postmaster first, so that it starts no process anew. */
    void killDatabase() throws IOException {
        List<ProcessHandle> database = database();
        if (database.isEmpty()) {
            throw new AssertionError("there is no PostgreSQL to kill");
        }
        database.forEach(ProcessHandle::destroyForcibly);
        database.forEach(one ->
                one.onExit().orTimeout(STOP_LIMIT_SECONDS, TimeUnit.SECONDS).join());
    }

    /** SIGTERM; it has not ended when this returns. */
    void tellToEnd() {
        process.destroy();
    }

    /** Whether it answers a page after it has said that it is not ready. */
    boolean answersThoughNotReady() throws InterruptedException {
        Visitor watching = new Visitor(URI.create("http://127.0.0.1:" + managementPort()));
        Visitor reading = new Visitor(address);
        try {
            while (watching.get("/q/health/ready").statusCode() == 200) {
                Thread.sleep(50);
            }
            return reading.get("/sign-in").statusCode() == 200;
        } catch (IOException gone) {
            return false;
        }
    }

    /** As Ctrl+C does it; returns the exit code. */
    int stop() throws InterruptedException {
        tellToEnd();
        if (!process.waitFor(STOP_LIMIT_SECONDS, TimeUnit.SECONDS)) {
            throw new AssertionError("the server did not stop");
        }
        return process.exitValue();
    }

    boolean alive() {
        return process.isAlive();
    }

    /** The processes of its own PostgreSQL that are alive, the postmaster first. */
    List<ProcessHandle> database() throws IOException {
        Path file = folder.resolve("cluster").resolve("postmaster.pid");
        if (!Files.exists(file)) {
            return List.of();
        }
        long pid = Long.parseLong(Files.readAllLines(file).get(0).strip());
        return ProcessHandle.of(pid)
                .filter(postmaster -> postmaster
                        .info()
                        .command()
                        .filter(program -> program.contains("postgres"))
                        .isPresent())
                .map(postmaster -> Stream.concat(Stream.of(postmaster), postmaster.descendants())
                        .toList())
                .orElse(List.of());
    }

    @Override
    public void close() throws IOException, InterruptedException {
        process.destroy();
        if (!process.waitFor(STOP_LIMIT_SECONDS, TimeUnit.SECONDS)) {
            kill();
        }
        for (ProcessHandle left : database()) {
            left.destroyForcibly();
            left.onExit().orTimeout(STOP_LIMIT_SECONDS, TimeUnit.SECONDS).join();
        }
    }

    /** What it tells whoever watches it. */
    String health() throws IOException, InterruptedException {
        return new Visitor(URI.create("http://127.0.0.1:" + managementPort()))
                .get("/q/health/ready")
                .body();
    }

    /** Asks until it answers that it is ready; false if it ended instead, or took too long. */
    boolean becomesReady() throws InterruptedException {
        Visitor visitor = new Visitor(URI.create("http://127.0.0.1:" + managementPort()));
        long end = System.nanoTime() + START_LIMIT.toNanos();
        while (System.nanoTime() < end) {
            if (process.waitFor(200, TimeUnit.MILLISECONDS)) {
                return false;
            }
            try {
                HttpResponse<String> answer = visitor.get("/q/health/ready");
                if (answer.statusCode() == 200) {
                    return true;
                }
            } catch (IOException notListeningYet) {
                // asked again
            }
        }
        return false;
    }
}
