package org.benchtrail.operations;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import org.benchtrail.platform.TestDatabase;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;

/** A server that migrates at its start, as that of the demo does, starts again on a schema that a later release has migrated. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class NewerSchemaTest {
    @Inject
    Flyway schema;

    @Test
    void schemaOfALaterRelease_isLeftAsItIs() {
        TestDatabase.run(
                "insert into flyway_schema_history (installed_rank, version, description, type, script, checksum,"
                        + " installed_by, execution_time, success) select max(installed_rank) + 1, '99991231000000', 'later', 'SQL',"
                        + " 'V99991231000000__later.sql', 1, 'later', 1, true from flyway_schema_history");
        try {
            assertEquals(0, assertDoesNotThrow(schema::migrate).migrationsExecuted);
            assertEquals(0, new MigrateCommand(schema).run());
        } finally {
            TestDatabase.run("delete from flyway_schema_history where version = '99991231000000'");
        }
    }
}
