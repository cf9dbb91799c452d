package org.benchtrail.knowledge;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.document.Sureness;
import org.jspecify.annotations.Nullable;

/** Reads the rows of a page of results, with the words found marked. */
final class Hits {
    private static final String BOUNDS = "StartSel=" + Marked.START + ", StopSel=" + Marked.STOP;
    private static final String WHOLE = "HighlightAll=true, " + BOUNDS;
    private static final String PASSAGE =
            "MaxFragments=2, MaxWords=35, MinWords=20, FragmentDelimiter=\" … \", " + BOUNDS;

    private static final String CAUSES = "select id, ts_headline('simple', title, query, ?), category, state,"
            + " ts_headline('simple', shows, query, ?), ts_headline('simple', apart, query, ?), confirmations, measured,"
            + " last_confirmed, confirmed_by from known_cause, (select cast(? as tsquery) as query) q where id = any(?)"
            + " order by array_position(?, id)";

    private static final String CASES = "select serial, ts_headline('simple', title, query, ?), device, category,"
            + " ts_headline('simple', cause, query, ?), sureness, ts_headline('simple', body, query, ?), findings, closed,"
            + " minutes, known from closed_case, (select cast(? as tsquery) as query) q where serial = any(?)"
            + " order by array_position(?, serial)";

    private final Connection connection;

    Hits(Connection connection) {
        this.connection = connection;
    }

    List<Found.CauseHit> causes(List<Long> ids, String query) throws SQLException {
        List<Found.CauseHit> hits = new ArrayList<>();
        if (ids.isEmpty()) {
            return hits;
        }
        try (PreparedStatement statement = prepare(CAUSES, WHOLE, PASSAGE, PASSAGE, query, "bigint", ids);
                ResultSet row = statement.executeQuery()) {
            while (row.next()) {
                hits.add(new Found.CauseHit(
                        row.getLong(1),
                        Marked.read(row.getString(2)),
                        Category.valueOf(row.getString(3)),
                        CauseState.valueOf(row.getString(4)),
                        Marked.read(row.getString(5)),
                        Marked.read(row.getString(6)),
                        row.getInt(7),
                        row.getInt(8),
                        instant(row, 9),
                        row.getString(10)));
            }
        }
        return hits;
    }

    List<Found.CaseHit> cases(List<Long> serials, String query) throws SQLException {
        List<Found.CaseHit> hits = new ArrayList<>();
        if (serials.isEmpty()) {
            return hits;
        }
        try (PreparedStatement statement = prepare(CASES, WHOLE, WHOLE, PASSAGE, query, "integer", serials);
                ResultSet row = statement.executeQuery()) {
            while (row.next()) {
                hits.add(new Found.CaseHit(
                        new TicketNumber(row.getInt(1)).toString(),
                        Marked.read(row.getString(2)),
                        row.getString(3),
                        Category.valueOf(row.getString(4)),
                        Marked.read(row.getString(5)),
                        Sureness.valueOf(row.getString(6)),
                        Marked.read(row.getString(7)),
                        Arrays.asList((String[]) row.getArray(8).getArray()),
                        row.getObject(9, OffsetDateTime.class).toInstant(),
                        (Integer) row.getObject(10),
                        (Long) row.getObject(11)));
            }
        }
        return hits;
    }

    private PreparedStatement prepare(
            String sql, String first, String second, String third, String query, String type, List<Long> keys)
            throws SQLException {
        PreparedStatement statement = connection.prepareStatement(sql);
        statement.setString(1, first);
        statement.setString(2, second);
        statement.setString(3, third);
        statement.setString(4, query);
        statement.setArray(5, connection.createArrayOf(type, keys.toArray()));
        statement.setArray(6, connection.createArrayOf(type, keys.toArray()));
        return statement;
    }

    private static @Nullable Instant instant(ResultSet row, int column) throws SQLException {
        OffsetDateTime at = row.getObject(column, OffsetDateTime.class);
        return at == null ? null : at.toInstant();
    }
}
