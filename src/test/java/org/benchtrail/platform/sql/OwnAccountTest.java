package org.benchtrail.platform.sql;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.QuarkusTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import org.benchtrail.platform.TestDatabase;
import org.junit.jupiter.api.Test;

/** Another account for some statements of a transaction: it is one transaction still, and nothing of it outlives its place. */
@QuarkusTest
@QuarkusTestResource(TestDatabase.class)
class OwnAccountTest {
    private static final String OF_PRACTICE = "insert into practice_own (author, created) values ('account-mo', now())";
    private static final String LIVE = "insert into requester (name, contact) values ('account-rae', 'c')";

    @Inject
    EntityManager database;

    private String account() {
        return Sql.of(database, "select cast(current_user as text)").value(String.class);
    }

    private int run(String sql) {
        return Sql.of(database, sql).run();
    }

    private static List<Integer> kept() throws SQLException {
        try (Connection owner = TestDatabase.owner();
                Statement statement = owner.createStatement();
                ResultSet row =
                        statement.executeQuery("select (select count(*) from practice_own where author = 'account-mo'),"
                                + " (select count(*) from requester where name = 'account-rae')")) {
            row.next();
            return List.of(row.getInt(1), row.getInt(2));
        }
    }

    @Test
    void itIsTakenOnForItsStatements_oneWithinAnother_andLaidDownAgain() {
        QuarkusTransaction.requiringNew().run(() -> {
            String server = account();
            OwnAccount.PRACTICE.during(database, () -> {
                assertEquals(OwnAccount.PRACTICE.beside(server), account());
                OwnAccount.PRIVATE.during(database, "forecast.person", "account-ann", () -> {
                    assertEquals(OwnAccount.PRIVATE.beside(server), account());
                    return 0;
                });
                assertEquals(OwnAccount.PRACTICE.beside(server), account());
                return 0;
            });
            assertEquals(server, account());
        });
    }

    @Test
    void actOfBoth_isKeptAsAWhole_orNotAtAll() throws SQLException {
        List<Integer> before = kept();
        assertThrows(
                IllegalStateException.class,
                () -> QuarkusTransaction.requiringNew().run(() -> {
                    run(LIVE);
                    OwnAccount.PRACTICE.during(database, () -> run(OF_PRACTICE));
                    throw new IllegalStateException("after both");
                }));
        assertEquals(before, kept());
        QuarkusTransaction.requiringNew().run(() -> {
            OwnAccount.PRACTICE.during(database, () -> run(OF_PRACTICE));
            run(LIVE);
        });
        assertEquals(List.of(before.get(0) + 1, before.get(1) + 1), kept());
    }

    @Test
    void statementInTheWrongPlace_isRefused_andNothingOfItsTransactionStays() throws SQLException {
        List<Integer> before = kept();
        NoRight.assertRefused(() -> QuarkusTransaction.requiringNew().run(() -> run(OF_PRACTICE)));
        NoRight.assertRefused(() -> QuarkusTransaction.requiringNew()
                .run(() -> OwnAccount.PRACTICE.during(database, () -> run(OF_PRACTICE) + run(LIVE))));
        NoRight.assertRefused(() -> QuarkusTransaction.requiringNew()
                .run(() ->
                        OwnAccount.PRIVATE.during(database, "forecast.person", "account-ann", () -> run(OF_PRACTICE))));
        assertEquals(before, kept());
        QuarkusTransaction.requiringNew()
                .run(() -> assertEquals(0, run("update requester set contact = 'd' where false")));
    }
}
