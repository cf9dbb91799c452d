package org.benchtrail.packaged;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.benchtrail.platform.database.EmbeddedDatabase;

/** What PostgreSQL takes for the statements of an act by itself: asked by pgbench, if the machine has it. */
final class SpeedBench {
    private static final Pattern PER_SECOND = Pattern.compile("tps = ([0-9.]+)");
    private static final int WORKERS = 2;

    private SpeedBench() {}

    /** On so many tickets, those that were opened last; NaN if there is no pgbench. What it writes is no sound trail. */
    static double perSecond(ShopDatabase database, int tickets, int clients, int seconds)
            throws IOException, InterruptedException, SQLException {
        Path script = Path.of("target", "packaged", "act.pgbench").toAbsolutePath();
        try (InputStream text = SpeedBench.class.getResourceAsStream("act.pgbench")) {
            Files.copy(Objects.requireNonNull(text), script, StandardCopyOption.REPLACE_EXISTING);
        }
        int last = Integer.parseInt(
                database.rows("select last from ticket_counter").get(0).get(0));
        EmbeddedDatabase.Access access = database.access();
        URI address = URI.create(access.jdbcUrl().substring("jdbc:".length()));
        List<String> command = new ArrayList<>(List.of("pgbench", "--no-vacuum", "--protocol=prepared"));
        command.addAll(List.of("--client=" + clients, "--jobs=" + WORKERS, "--time=" + seconds));
        command.addAll(List.of("--define=first=" + (last - tickets + 1), "--define=last=" + last));
        command.addAll(List.of("--file=" + script, "--host=127.0.0.1", "--port=" + address.getPort()));
        command.addAll(List.of("--username=" + access.server().user(), "benchtrail"));
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
        builder.environment().put("PGPASSWORD", access.server().password());
        Process process;
        try {
            process = builder.start();
        } catch (IOException none) {
            System.out.println("There is no pgbench here: acts stand beside nothing.");
            return Double.NaN;
        }
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        Matcher perSecond = PER_SECOND.matcher(said);
        if (process.waitFor() != 0 || !perSecond.find()) {
            throw new AssertionError("pgbench said:\n" + said);
        }
        return Double.parseDouble(perSecond.group(1));
    }
}
