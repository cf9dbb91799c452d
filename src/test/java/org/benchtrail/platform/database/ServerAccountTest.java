package org.benchtrail.platform.database;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import java.sql.Connection;
import java.sql.SQLException;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.Test;

@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class ServerAccountTest {
    @Test
    void ownerOfTheTables_isToldFromTheServersOwnAccount() throws SQLException {
        try (Connection owner = TestDatabase.owner();
                Connection server = TestDatabase.server()) {
            assertTrue(ServerAccount.ownsTables(owner));
            assertFalse(ServerAccount.ownsTables(server));
        }
    }
}
