package org.benchtrail.knowledge;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.document.Sureness;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.jspecify.annotations.Nullable;

/** Reads the rows of a page of results, with the words found highlighted. */
@ApplicationScoped
class ResultRows {
    private static final String BOUNDS = "StartSel=" + Highlighted.START + ", StopSel=" + Highlighted.STOP;
    private static final String WHOLE = "HighlightAll=true, " + BOUNDS;
    private static final String PASSAGE =
            "MaxFragments=2, MaxWords=35, MinWords=20, FragmentDelimiter=\" … \", " + BOUNDS;

    private final EntityManager database;
    private final SqlText sql = SqlText.of(ResultRows.class);

    ResultRows(EntityManager database) {
        this.database = database;
    }

    private record CauseRow(
            long id,
            String title,
            Category category,
            CauseState state,
            String shows,
            String apart,
            int confirmations,
            int measured,
            @Nullable Instant lastConfirmed,
            @Nullable String confirmedBy) {
        SearchResults.CauseHit hit() {
            return new SearchResults.CauseHit(
                    id,
                    Highlighted.read(title),
                    category,
                    state,
                    Highlighted.read(shows),
                    Highlighted.read(apart),
                    confirmations,
                    measured,
                    lastConfirmed,
                    confirmedBy);
        }
    }

    /** In the order of the ids. */
    List<SearchResults.CauseHit> causes(List<Long> ids, String query) {
        return ids.isEmpty()
                ? List.of()
                : statement("causes", query, ids.toArray(Long[]::new)).rows(CauseRow.class).stream()
                        .map(CauseRow::hit)
                        .toList();
    }

    private record CaseRow(
            int serial,
            String title,
            String device,
            Category category,
            String cause,
            Sureness sureness,
            String passage,
            List<String> findings,
            Instant closed,
            @Nullable Integer minutes,
            @Nullable Long known) {
        SearchResults.CaseHit hit() {
            return new SearchResults.CaseHit(
                    new TicketNumber(serial).toString(),
                    Highlighted.read(title),
                    device,
                    category,
                    Highlighted.read(cause),
                    sureness,
                    Highlighted.read(passage),
                    findings,
                    closed,
                    minutes,
                    known);
        }
    }

    /** In the order of the serials. */
    List<SearchResults.CaseHit> cases(List<Long> serials, String query) {
        return serials.isEmpty()
                ? List.of()
                : statement("cases", query, serials.stream().map(Long::intValue).toArray(Integer[]::new))
                        .rows(CaseRow.class)
                        .stream()
                        .map(CaseRow::hit)
                        .toList();
    }

    private Sql statement(String name, String query, Object[] keys) {
        return Sql.of(database, sql.statement(name))
                .with("whole", WHOLE)
                .with("passage", PASSAGE)
                .with("query", query)
                .with("keys", keys);
    }
}
