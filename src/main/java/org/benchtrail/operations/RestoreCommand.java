package org.benchtrail.operations;

import io.quarkus.runtime.QuarkusApplication;
import java.io.IOException;
import java.nio.file.Path;
import java.sql.SQLException;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;

/**
 * {@code restore FILE}: puts a backup into a new database. 0 if it is restored, 1 if it was refused or failed, 2 if the command was
 * given wrongly.
 */
public class RestoreCommand implements QuarkusApplication {
    private final Flyway schema;

    public RestoreCommand(Flyway schema) {
        this.schema = schema;
    }

    @Override
    public int run(String... words) {
        try {
            long rows = new Restore(schema.getConfiguration(), line -> System.out.println("  " + line))
                    .from(Path.of(words[1]));
            System.out.println(
                    "Restored " + rows + " rows. Start the server, and let the page Seal look at the whole site.");
            return 0;
        } catch (Restore.Refused e) {
            System.err.println(e.getMessage());
        } catch (IOException | SQLException | FlywayException e) {
            System.err.println("Nothing is restored: " + e.getMessage());
        }
        return 1;
    }
}
