package org.benchtrail.platform.database;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/** Runs the PostgreSQL programs: never as root, in a plain environment, with a time limit, telling while it waits. */
final class PostgresTools {
    private static final long TELL_EVERY_SECONDS = 5;

    private final Path output;
    private final PostgresBinaries binaries;
    private final List<String> prefix;

    PostgresTools(Path output, PostgresBinaries binaries, List<String> prefix) {
        this.output = output;
        this.binaries = binaries;
        this.prefix = prefix;
    }

    /** Those of a data folder, which nobody else may be using: what an interrupted start left half done is swept away. */
    static PostgresTools of(DataFolder folder, Progress progress) throws IOException {
        folder.sweep();
        Path ours = OwnerOnly.createEmpty(folder.toolOutput());
        folder.requireSameOwner(ours);
        List<String> asOrdinaryUser = OrdinaryUser.prefix(ours);
        return new PostgresTools(ours, PostgresBinaries.of(folder, progress), asOrdinaryUser);
    }

    /** How a program ended and what it said. */
    record Outcome(boolean succeeded, String said) {}

    /**
     * @param waiting what to say while it takes long, such as "Creating the database"
     * @param arguments the program's name and its arguments
     */
    Outcome run(String waiting, Duration limit, Progress progress, List<String> arguments) throws IOException {
        Process process = builder(arguments).start();
        try {
            process.getOutputStream().close();
            if (!ends(process, waiting, limit, progress)) {
                return new Outcome(false, waiting + ": no end after " + limit.toSeconds() + " s. " + said());
            }
            return new Outcome(process.exitValue() == 0, said());
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new DatabaseNotStarted(waiting + " was interrupted.", interrupted);
        } finally {
            process.destroyForcibly();
        }
    }

    private static boolean ends(Process process, String waiting, Duration limit, Progress progress)
            throws InterruptedException {
        for (long seconds = 0; seconds < limit.toSeconds(); seconds += TELL_EVERY_SECONDS) {
            if (process.waitFor(TELL_EVERY_SECONDS, TimeUnit.SECONDS)) {
                return true;
            }
            progress.tell(waiting + ", " + (seconds + TELL_EVERY_SECONDS) + " s so far ...");
        }
        return false;
    }

    /** Output goes to a file: the postmaster inherits it on some systems, and a pipe would then never end. */
    private ProcessBuilder builder(List<String> arguments) {
        List<String> command = new ArrayList<>(prefix);
        command.add(binaries.program(arguments.get(0)).toString());
        command.addAll(arguments.subList(1, arguments.size()));
        ProcessBuilder builder =
                new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(output.toFile());
        cleanse(builder.environment());
        return builder;
    }

    /** Settings of the person at the console must not steer the server, nor choose the libraries it loads. */
    private static void cleanse(Map<String, String> environment) {
        environment.keySet().removeIf(name -> name.matches("(PG|LD_|DYLD_|LC_).*|LANG|LANGUAGE"));
        environment.put("LC_ALL", "C");
        environment.put("TZ", "UTC");
    }

    private String said() throws IOException {
        return Files.readString(output).strip();
    }
}
