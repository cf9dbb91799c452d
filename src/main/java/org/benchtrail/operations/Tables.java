package org.benchtrail.operations;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.benchtrail.platform.sql.SqlText;

/** The tables of the present schema, those first that others refer to. */
final class Tables {
    /** What a restored server must not have again: sign-ins that may have ended since, and counts of tries. */
    private static final Set<String> OF_THE_MOMENT = Set.of("sign_in_session", "throttle");

    private static final SqlText TEXT = SqlText.of(Tables.class);

    private Tables() {}

    /**
     * A table.
     *
     * @param columns those that hold what was put in, with commas between
     */
    record Table(String name, String columns) {
        boolean isKept() {
            return !OF_THE_MOMENT.contains(name);
        }
    }

    static List<Table> all(Connection database) throws SQLException {
        return read(database, "all");
    }

    /** Those that number their rows, each with the column that holds the number. */
    static List<Table> numbered(Connection database) throws SQLException {
        return read(database, "sequences");
    }

    private static List<Table> read(Connection database, String statement) throws SQLException {
        List<Table> tables = new ArrayList<>();
        try (Statement asked = database.createStatement();
                ResultSet rows = asked.executeQuery(TEXT.statement(statement))) {
            while (rows.next()) {
                tables.add(new Table(rows.getString("name"), rows.getString("columns")));
            }
        }
        return tables;
    }
}
