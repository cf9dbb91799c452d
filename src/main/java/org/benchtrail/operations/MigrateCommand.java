package org.benchtrail.operations;

import io.quarkus.runtime.QuarkusApplication;
import java.util.Arrays;
import java.util.List;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.MigrationInfo;
import org.flywaydb.core.api.MigrationState;

/**
 * {@code migrate}: brings the schema up to this release, so that servers can run without the owner's password. 0 if it is up to
 * date now; what fails ends with 1 before this is reached.
 */
public class MigrateCommand implements QuarkusApplication {
    private final Flyway schema;

    public MigrateCommand(Flyway schema) {
        this.schema = schema;
    }

    @Override
    public int run(String... words) {
        List<MigrationInfo> newer = Arrays.stream(schema.info().applied())
                .filter(one -> one.getState() == MigrationState.FUTURE_SUCCESS)
                .toList();
        System.out.println("The schema is at " + schema.info().current().getVersion() + "."
                + (newer.isEmpty()
                        ? ""
                        : " A newer release has migrated it (" + newer.size() + " steps): this one runs on it."));
        return 0;
    }
}
