package org.benchtrail.platform;

import java.nio.charset.StandardCharsets;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;

/** Looks for a value in every table of the database, whoever owns it. */
public final class Everywhere {
    private Everywhere() {}

    /** Tables that hold the value, in words or in bytes; letter case aside, since lists of words have none. */
    public static List<String> holding(String value) {
        String text = value.replace("'", "''").toLowerCase(Locale.ROOT);
        String hex = HexFormat.of().formatHex(value.getBytes(StandardCharsets.UTF_8));
        List<String> holding = new ArrayList<>();
        // a connection for each table would take longer than the search
        try (var connection = TestDatabase.owner();
                var statement = connection.createStatement()) {
            List<String> tables = new ArrayList<>();
            try (var rows = statement.executeQuery("select schemaname || '.' || tablename from pg_tables"
                    + " where schemaname not in ('pg_catalog', 'information_schema') order by 1")) {
                while (rows.next()) {
                    tables.add(rows.getString(1));
                }
            }
            for (String table : tables) {
                try (var rows = statement.executeQuery("select 1 from " + table + " t where lower(t::text) like '%"
                        + text + "%' or t::text like '%" + hex + "%' limit 1")) {
                    if (rows.next()) {
                        holding.add(table);
                    }
                }
            }
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
        return holding;
    }
}
