package org.benchtrail.training;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.training.RecallPlan;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;

/** What people answered to the questions at the beginning of a shift, each person's apart: the only door to its schema. */
@Startup
@ApplicationScoped
class RecallStore {
    private final EntityManager database;
    private final Clock clock;
    private final SqlText text =
            SqlText.of(RecallStore.class).having("answer", "answers", "erase", "end", "ended", "tickets");
    private final OwnRows rows;

    RecallStore(EntityManager database, Clock clock) {
        this.database = database;
        this.clock = clock;
        rows = new OwnRows(database, text, "recall.person");
    }

    /** An answer as it is kept. */
    record Row(String item, LocalDate day, String given, boolean hit) {
        RecallPlan.Answered answered() {
            return new RecallPlan.Answered(item, day, hit);
        }
    }

    /** In their order. */
    List<Row> answers(String person) {
        return rows.of(person, "answers", sql -> sql.rows(Row.class));
    }

    /** Where one of that day is there already, it stands. */
    void answer(String person, Row row) {
        rows.of(
                person,
                "answer",
                sql -> sql.with("item", row.item)
                        .with("day", row.day)
                        .with("at", clock.instant())
                        .with("given", row.given)
                        .with("hit", row.hit)
                        .run());
    }

    void erase(String person) {
        rows.of(person, "erase", Sql::run);
    }

    /** Nothing more is asked on that day. */
    void end(String person, LocalDate day) {
        rows.of(
                person,
                "end",
                sql -> sql.with("day", day).with("at", clock.instant()).run());
    }

    boolean isEnded(String person, LocalDate day) {
        return rows.of(person, "ended", sql -> sql.with("day", day).value(Boolean.class));
    }

    /** Tickets on which that person left a step or tried to, the latest ones. */
    List<TicketNumber> tickets(String person) {
        return Sql.of(database, text.statement("tickets")).with("person", person).values(Integer.class).stream()
                .map(TicketNumber::new)
                .toList();
    }
}
