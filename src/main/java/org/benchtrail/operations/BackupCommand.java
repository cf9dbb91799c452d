package org.benchtrail.operations;

import io.quarkus.runtime.QuarkusApplication;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.MigrationInfo;

/**
 * {@code backup FILE}: writes a backup, also while servers run. 0 if it is written, 1 if it could not be, 2 if the command was
 * given wrongly.
 */
public class BackupCommand implements QuarkusApplication {
    private final Flyway schema;

    public BackupCommand(Flyway schema) {
        this.schema = schema;
    }

    @Override
    public int run(String... words) {
        if (Files.exists(Path.of(words[1]))) {
            System.err.println(words[1] + " is there already: name a file that is not.");
            return 2;
        }
        MigrationInfo last = schema.info().current();
        try (Connection database = schema.getConfiguration().getDataSource().getConnection()) {
            long rows = Backup.write(
                    database,
                    last.getVersion().getVersion(),
                    Path.of(words[1]),
                    line -> System.out.println("  " + line));
            System.out.println("Backed up " + rows + " rows to " + words[1]
                    + ". The key of the log is not in it: keep that file apart.");
            return 0;
        } catch (IOException | SQLException e) {
            System.err.println("No backup was written: " + e.getMessage());
            return 1;
        }
    }
}
