package org.benchtrail.packaged;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import org.benchtrail.platform.sql.SqlText;
import org.benchtrail.ticket.TicketPlansTest;

/** Invented tickets in the tables of a server, more and more of them; those that have ended are cases as well. */
final class SpeedData {
    /** Open ones are one of fifty. */
    private static final int SHARE = 50;

    private final SqlText invented = SqlText.of(TicketPlansTest.class);
    private final SqlText taken = SqlText.of(SpeedData.class);
    private int there;

    /** Grows to so many; the owner of the tables is asked. */
    void grow(Connection owner, int rows) throws SQLException {
        try (Statement statement = owner.createStatement()) {
            statement.execute("set synchronous_commit = off");
            run(
                    statement,
                    invented,
                    rows,
                    List.of("none", "schema", "table", "texts", "tickets", "words", "devices", "requesters"));
            run(
                    statement,
                    taken,
                    rows,
                    List.of(
                            "indexes away",
                            "triggers away",
                            "requesters",
                            "words",
                            "devices",
                            "tickets",
                            "cases",
                            "words of cases",
                            "requesters go on",
                            "numbers go on",
                            "triggers back"));
            run(statement, taken, rows, List.of("indexes back", "statistics"));
            run(statement, invented, rows, List.of("none"));
        }
        there = rows;
    }

    private void run(Statement statement, SqlText text, int rows, List<String> names) throws SQLException {
        for (String name : names) {
            statement.execute(text.statement(name)
                    .replace("{from}", Integer.toString(there + 1))
                    .replace("{rows}", Integer.toString(rows))
                    .replace("{closed}", Integer.toString(rows / SHARE * (SHARE - 1))));
        }
    }
}
