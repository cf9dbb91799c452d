package org.benchtrail.platform.database;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.regex.Pattern;

/**
 * The processes of the machine that serve one cluster. A process id in a file proves nothing: the id may have been given to
 * somebody else since. So a process counts only if it is a postgres at work in this very folder.
 */
final class ClusterProcesses {
    private static final Pattern POSTGRES = Pattern.compile("postgres(\\.exe)?( \\(deleted\\))?");

    private static final Duration LOOK_AGAIN = Duration.ofMillis(100);

    private final DataFolder folder;

    ClusterProcesses(DataFolder folder) {
        this.folder = folder;
    }

    /** The postmaster and its children, or children that outlived it. */
    List<ProcessHandle> all() {
        return ProcessHandle.allProcesses().filter(this::serves).toList();
    }

    /** The process that postmaster.pid names, if it is alive and ours. */
    Optional<ProcessHandle> postmaster() throws IOException {
        if (!Files.exists(folder.postmasterPid())) {
            return Optional.empty();
        }
        List<String> lines = Files.readAllLines(folder.postmasterPid());
        if (lines.isEmpty() || !lines.get(0).matches("\\d{1,18}")) {
            return Optional.empty();
        }
        return ProcessHandle.of(Long.parseLong(lines.get(0))).filter(this::serves);
    }

    /** Waits until no process serves the cluster; whether that came about in time. */
    boolean ended(Duration limit) {
        long end = System.nanoTime() + limit.toNanos();
        for (List<ProcessHandle> left = all(); !left.isEmpty(); left = all()) {
            if (System.nanoTime() > end || !awaitExit(left)) {
                return false;
            }
        }
        return true;
    }

    /**
     * Returns when all have exited, or after a moment: a process whose parent does not collect it never counts as exited
     * although it serves nobody any more. False if this thread is to give up.
     */
    private static boolean awaitExit(List<ProcessHandle> processes) {
        CompletableFuture<?>[] exits =
                processes.stream().map(ProcessHandle::onExit).toArray(CompletableFuture[]::new);
        try {
            CompletableFuture.allOf(exits).get(LOOK_AGAIN.toMillis(), TimeUnit.MILLISECONDS);
            return true;
        } catch (TimeoutException lookAgain) {
            return true;
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            return false;
        } catch (ExecutionException impossible) {
            throw new IllegalStateException("an exit cannot fail", impossible);
        }
    }

    private boolean serves(ProcessHandle process) {
        Path kernel = Path.of("/proc", Long.toString(process.pid()));
        return Files.exists(kernel) ? servesOnLinux(kernel) : runsOurProgram(process);
    }

    /**
     * Every PostgreSQL process works in its data directory. Compared as a file, not by name: a process in a container may
     * show the same path and mean another folder.
     */
    private boolean servesOnLinux(Path kernel) {
        try {
            Path program = Files.readSymbolicLink(kernel.resolve("exe")).getFileName();
            return program != null
                    && POSTGRES.matcher(program.toString()).matches()
                    && Files.isSameFile(kernel.resolve("cwd"), folder.cluster());
        } catch (IOException goneOrSomebodyElses) {
            return false;
        }
    }

    /** Elsewhere the working folder is not to be had; but nobody else runs the programs that lie in this data folder. */
    private boolean runsOurProgram(ProcessHandle process) {
        return process.info()
                .command()
                .map(Path::of)
                .filter(program -> program.startsWith(folder.path()))
                .map(Path::getFileName)
                .filter(name -> POSTGRES.matcher(name.toString()).matches())
                .isPresent();
    }
}
