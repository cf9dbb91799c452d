package org.benchtrail.platform.database;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;

/** A second Java process that uses the database, and the means to start one. */
final class OtherProcess implements AutoCloseable {
    private static final String READY = "ready";

    private final Process process;
    private final BufferedReader output;

    private OtherProcess(Process process) {
        this.process = process;
        this.output = process.inputReader(StandardCharsets.UTF_8);
    }

    /** Started and, if all went well, holding the database until told to end. */
    static OtherProcess using(Path dataFolder) throws IOException {
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        return new OtherProcess(new ProcessBuilder(List.of(
                        java,
                        "-Dfile.encoding=UTF-8",
                        "-cp",
                        System.getProperty("java.class.path"),
                        OtherProcess.class.getName(),
                        dataFolder.toString()))
                .redirectErrorStream(true)
                .start());
    }

    /** Everything it said until it was ready, or until it ended. */
    String said() throws IOException {
        StringBuilder text = new StringBuilder();
        for (String line = output.readLine(); line != null; line = output.readLine()) {
            text.append(line).append('\n');
            if (line.equals(READY)) {
                break;
            }
        }
        return text.toString();
    }

    boolean isReady() throws IOException {
        return said().endsWith(READY + "\n");
    }

    long pid() {
        return process.pid();
    }

    /** As the kernel does it to a process that uses too much memory. */
    void kill() throws InterruptedException {
        process.destroyForcibly().waitFor();
    }

    /** Lets it run to its end; it does not close the database itself. */
    void letEnd() throws IOException, InterruptedException {
        process.getOutputStream().close();
        process.waitFor();
    }

    @Override
    public void close() throws InterruptedException {
        kill();
    }

    public static void main(String[] arguments) throws IOException, SQLException {
        EmbeddedDatabase database = EmbeddedDatabase.start(Path.of(arguments[0]), System.out::println);
        try (Connection connection = DriverManager.getConnection(
                        database.jdbcUrl(),
                        database.owner().user(),
                        database.owner().password());
                Statement statement = connection.createStatement()) {
            statement.execute("INSERT INTO kept VALUES ('by process "
                    + ProcessHandle.current().pid() + "')");
        }
        System.out.println(READY);
        while (System.in.read() >= 0) {
            // until the other end closes
        }
    }
}
