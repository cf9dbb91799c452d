package org.benchtrail.training;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.persistence.EntityManager;
import java.time.Clock;
import java.time.Instant;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.training.ForecastContent;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.benchtrail.ticket.Sights;

/** What was forecast, each person's apart: the only door to its schema. */
@Startup
@ApplicationScoped
class ForecastStore {
    private final EntityManager database;
    private final Clock clock;
    private final SqlText text = SqlText.of(ForecastStore.class).having("whose", "keep", "saw");

    ForecastStore(EntityManager database, Clock clock) {
        this.database = database;
        this.clock = clock;
    }

    /** A statement about the rows of that person; the database shows no others until the transaction ends. */
    private Sql of(String person, String statement) {
        Sql.of(database, text.statement("whose")).with("person", person).value(String.class);
        return Sql.of(database, text.statement(statement)).with("person", person);
    }

    /** @param reference the catalogue's chances at that moment, as JSON */
    void keep(
            TicketNumber ticket,
            int entry,
            String person,
            Instant made,
            ForecastContent forecast,
            byte[] salt,
            String reference) {
        of(person, "keep")
                .with("ticket", ticket.serial())
                .with("entry", entry)
                .with("round", forecast.round())
                .with("kind", forecast.kind().name())
                .with("made", made)
                .with("value", forecast.canonical())
                .with("salt", salt)
                .with("reference", reference)
                .run();
    }

    void saw(@Observes Sights.AdviceSeen seen) {
        of(seen.viewer().account(), "saw")
                .with("ticket", seen.ticket().serial())
                .with("at", clock.instant())
                .run();
    }
}
