package org.benchtrail.people;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.text.PlainText;
import org.benchtrail.platform.Moments;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;

/** Reads the record of accounts, the newest first. */
@Startup
@ApplicationScoped
@Transactional
class EventQueries {
    private static final int PER_PAGE = 50;

    private final EntityManager database;
    private final SqlText text;

    EventQueries(EntityManager database) {
        this.database = database;
        text = SqlText.of(EventQueries.class).having("part");
    }

    private record Row(long id, Instant at, String who, String what, String about, String detail, String address) {}

    /** One event as text. */
    record Line(String at, String who, String what, String about, String detail, String address) {}

    /** @param next number after which to go on; 0 if there are no more */
    record Part(List<Line> lines, long next) {}

    Part part(Actor by, String about, long before, ZoneId zone) {
        Permissions.require(Permission.MANAGE_ACCOUNTS, by);
        new Invalid.Collector()
                .require(PlainText.isText(about), "about", PlainText.WHAT_TO_DO)
                .throwIfAny();
        List<Row> rows = Sql.of(database, text.statement("part"))
                .with("about", about)
                .with("before", before <= 0 ? Long.MAX_VALUE : before)
                .with("most", PER_PAGE + 1)
                .rows(Row.class);
        List<Row> shown = rows.subList(0, Math.min(PER_PAGE, rows.size()));
        return new Part(
                shown.stream()
                        .map(row -> new Line(
                                Moments.text(row.at(), zone),
                                row.who(),
                                row.what(),
                                row.about(),
                                RoleNames.inWords(row.detail()),
                                row.address()))
                        .toList(),
                rows.size() > PER_PAGE ? shown.get(PER_PAGE - 1).id() : 0);
    }
}
