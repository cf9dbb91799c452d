package org.benchtrail.training;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.ForecastKind;
import org.benchtrail.core.method.desk.ForecastSkipped;
import org.benchtrail.core.training.ChanceContent;
import org.benchtrail.core.training.ForecastContent;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.benchtrail.ticket.Sights;
import org.benchtrail.ticket.TicketChanged;
import org.benchtrail.ticket.forecast.EarlierForecast;

/** What was forecast, each person's apart: the only door to its schema. */
@Startup
@ApplicationScoped
class ForecastStore implements EarlierForecast {
    private final EntityManager database;
    private final Clock clock;
    private final SqlText text = SqlText.of(ForecastStore.class)
            .having("keep", "latest", "of", "erase", "erased", "skip", "skips", "read", "readings", "saw");
    private final OwnRows rows;

    ForecastStore(EntityManager database, Clock clock) {
        this.database = database;
        this.clock = clock;
        rows = new OwnRows(database, text, "forecast.person");
    }

    /**
     * What is kept of a forecast.
     *
     * @param value the bytes that its commitment stands for
     * @param reference the catalogue's chances at that moment, as JSON
     */
    record Kept(int round, ForecastKind kind, String value, byte[] salt, String reference) {}

    void keep(TicketNumber ticket, int entry, String person, Instant made, Kept forecast) {
        rows.of(
                person,
                "keep",
                sql -> sql.with("ticket", ticket.serial())
                        .with("entry", entry)
                        .with("round", forecast.round())
                        .with("kind", forecast.kind().name())
                        .with("made", made)
                        .with("value", forecast.value())
                        .with("salt", forecast.salt())
                        .with("reference", forecast.reference())
                        .run());
    }

    /**
     * A forecast as it is kept.
     *
     * @param seen whether the causes of the ticket were seen on a colleague's sheet before
     */
    record Row(
            int ticket, int entry, int round, String kind, Instant made, String value, String reference, boolean seen) {
        TicketNumber number() {
            return new TicketNumber(ticket);
        }

        boolean isOfCauses() {
            return ForecastKind.valueOf(kind).isOfCauses();
        }

        ChanceContent chance() {
            return KeptForecasts.readChance(value);
        }

        ForecastContent content() {
            return KeptForecasts.read(value);
        }

        Map<String, Double> chances() {
            return KeptForecasts.chances(reference);
        }
    }

    /** Newest first. */
    List<Row> of(String person) {
        return rows.of(person, "of", sql -> sql.rows(Row.class));
    }

    /** Nobody else's: the rows that the database shows are the viewer's. */
    @Override
    @Transactional
    public Optional<ForecastContent> of(TicketNumber number, Actor viewer) {
        return rows
                .of(
                        viewer.account(),
                        "latest",
                        sql -> sql.with("ticket", number.serial()).values(String.class))
                .stream()
                .findFirst()
                .map(KeptForecasts::read);
    }

    /** What it says is gone; that it was made stays on the trail, and that it was erased is recorded. */
    void erase(String person, Row row) {
        rows.of(
                person,
                "erase",
                sql -> sql.with("ticket", row.ticket).with("entry", row.entry).run());
        Sql.of(database, text.statement("erased"))
                .with("ticket", row.ticket)
                .with("entry", row.entry)
                .with("at", clock.instant())
                .run();
    }

    long skipped(String person) {
        return rows.of(person, "skips", sql -> sql.value(Long.class));
    }

    /** A reading by a mentor. */
    record Reading(String reader, Instant at) {}

    /** The latest ones. */
    List<Reading> readings(String person) {
        return rows.of(person, "readings", sql -> sql.rows(Reading.class));
    }

    void noteReading(String person, String reader) {
        rows.of(
                person,
                "read",
                sql -> sql.with("reader", reader).with("at", clock.instant()).run());
    }

    void skipped(@Observes TicketChanged change) {
        for (Entry entry : change.entries()) {
            if (entry.fact() instanceof ForecastSkipped skipped) {
                rows.of(
                        skipped.person(),
                        "skip",
                        sql -> sql.with("ticket", change.number().serial())
                                .with("entry", entry.stamp().entry())
                                .with("at", entry.stamp().at())
                                .run());
            }
        }
    }

    void saw(@Observes Sights.AdviceSeen seen) {
        rows.of(
                seen.viewer().account(),
                "saw",
                sql -> sql.with("ticket", seen.ticket().serial())
                        .with("at", clock.instant())
                        .run());
    }
}
