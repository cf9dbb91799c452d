package org.benchtrail.knowledge;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import org.benchtrail.core.diagnosis.Likeness;
import org.benchtrail.core.method.Category;
import org.jspecify.annotations.Nullable;

/** Cases that are like a ticket by what was found on it. */
final class AlikeCases {
    /** So many of the newest cases of the kind are compared; they also tell how rare a finding is. */
    private static final int COMPARED = 2_000;

    /** Below this likeness a case tells nothing; common practice, no source. */
    private static final double LEAST = 0.2;

    private final Connection connection;

    AlikeCases(Connection connection) {
        this.connection = connection;
    }

    /**
     * A case that is like it.
     *
     * @param shared findings that both have
     */
    record AlikeCase(int serial, @Nullable Long known, double likeness, List<String> shared) {}

    private record ComparedCase(int serial, @Nullable Long known, List<String> findings) {}

    /** The likest first; nothing if nothing was found on the ticket yet. */
    List<AlikeCase> like(Collection<String> findings, @Nullable Category category) throws SQLException {
        if (findings.isEmpty()) {
            return List.of();
        }
        List<ComparedCase> cases = newest(category);
        Likeness likeness =
                Likeness.among(cases.stream().map(ComparedCase::findings).toList());
        return cases.stream()
                .map(c -> new AlikeCase(
                        c.serial(), c.known(), likeness.of(findings, c.findings()), shared(findings, c.findings())))
                .filter(like -> like.likeness() >= LEAST)
                .sorted(Comparator.comparingDouble(AlikeCase::likeness).reversed())
                .toList();
    }

    private static List<String> shared(Collection<String> some, Collection<String> others) {
        return some.stream().filter(others::contains).sorted().toList();
    }

    private List<ComparedCase> newest(@Nullable Category category) throws SQLException {
        String sql = "select serial, known, findings from closed_case where not reopened"
                + (category == null ? "" : " and category = ?") + " order by closed desc, serial desc limit "
                + COMPARED;
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            if (category != null) {
                statement.setString(1, category.name());
            }
            List<ComparedCase> cases = new ArrayList<>();
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    String[] findings = (String[]) row.getArray(3).getArray();
                    cases.add(new ComparedCase(row.getInt(1), (Long) row.getObject(2), Arrays.asList(findings)));
                }
            }
            return cases;
        }
    }
}
