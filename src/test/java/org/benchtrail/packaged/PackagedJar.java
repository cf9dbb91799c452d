package org.benchtrail.packaged;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/** The jar that the build made, started as somebody would start it. */
final class PackagedJar {
    private static final int LIMIT_SECONDS = 120;

    private PackagedJar() {}

    /** What this build made. */
    static Path built() {
        return Path.of(System.getProperty("benchtrail.jar"));
    }

    /** A process that has ended: how, and all it said. */
    record Ended(int code, String said) {}

    /** An empty folder of the build for one test. */
    static Path folder(String name) throws IOException {
        Path folder = place(name);
        if (Files.exists(folder)) {
            try (Stream<Path> tree = Files.walk(folder)) {
                for (Path path : tree.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(path);
                }
            }
        }
        return Files.createDirectories(folder);
    }

    /** Where {@link #folder} makes it. */
    static Path place(String name) {
        return Path.of("target", "packaged", name).toAbsolutePath();
    }

    /**
     * Starts it. Nothing of this process's own settings reaches it.
     *
     * @param properties system properties, {@code name=value}
     * @param log takes all it says
     */
    static Process start(Map<String, String> environment, List<String> properties, Path log, String... words)
            throws IOException {
        return start(built(), environment, properties, log, words);
    }

    /** As {@link #start(Map, List, Path, String...)}, with the jar of another build. */
    static Process start(Path jar, Map<String, String> environment, List<String> properties, Path log, String... words)
            throws IOException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        // most lives are too short for more than the first compiler
        String options = System.getProperty("benchtrail.java", "-Xmx400m -XX:TieredStopAtLevel=1 -XX:+UseSerialGC");
        command.addAll(List.of(options.split(" ")));
        properties.forEach(property -> command.add("-D" + property));
        String otherwise = System.getProperty("benchtrail.launch", "");
        command.addAll(otherwise.isEmpty() ? List.of("-jar", jar.toString()) : List.of(otherwise.split(" ")));
        command.addAll(List.of(words));
        ProcessBuilder builder = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(log.toFile()));
        builder.environment().keySet().removeIf(name -> name.startsWith("BENCHTRAIL_") || name.startsWith("QUARKUS_"));
        // crowds of a test ask faster than any program should
        builder.environment().put("BENCHTRAIL_API_REQUESTS_PER_MINUTE", "1000000");
        builder.environment().putAll(environment);
        return builder.start();
    }

    /** Starts it and waits until it has ended by itself. */
    static Ended run(Map<String, String> environment, List<String> properties, String... words)
            throws IOException, InterruptedException {
        Path log = Files.createTempFile(Files.createDirectories(Path.of("target", "packaged")), "run", ".log");
        Process process = start(environment, properties, log, words);
        boolean ended = process.waitFor(LIMIT_SECONDS, TimeUnit.SECONDS);
        if (!ended) {
            process.destroy();
            if (!process.waitFor(LIMIT_SECONDS, TimeUnit.SECONDS)) {
                process.destroyForcibly();
            }
        }
        String said = Files.readString(log, StandardCharsets.UTF_8);
        Files.delete(log);
        if (!ended) {
            throw new AssertionError("did not end by itself; it said:\n" + said);
        }
        return new Ended(process.exitValue(), said);
    }
}
