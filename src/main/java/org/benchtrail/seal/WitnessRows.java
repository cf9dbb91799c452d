package org.benchtrail.seal;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;

/** What witnesses signed and answered; everything within the running transaction. */
@Startup
@ApplicationScoped
class WitnessRows {
    private final EntityManager database;
    private final SqlText text;

    WitnessRows(EntityManager database) {
        this.database = database;
        text = SqlText.of(WitnessRows.class).having("keep", "note", "last", "first signed", "newest");
    }

    /** Keeps the first signature of a witness for a size. */
    void keep(long size, String key, Instant at, String line) {
        Sql.of(database, text.statement("keep"))
                .with("size", size)
                .with("key", key)
                .with("at", at)
                .with("line", line)
                .run();
    }

    /** Notes an answer; 0 as status stands for none. */
    void note(Instant at, String witness, long size, int status, String detail) {
        Sql.of(database, text.statement("note"))
                .with("at", at)
                .with("witness", witness)
                .with("size", size)
                .with("status", status)
                .with("detail", detail)
                .run();
    }

    /** The largest size that the witness of that key signed; 0 if none. */
    long last(String key) {
        return Sql.of(database, text.statement("last")).with("key", key).value(Long.class);
    }

    /** When a witness first signed a head; empty if none ever did. */
    Optional<Instant> firstSigned() {
        return Sql.of(database, text.statement("first signed")).values(Instant.class).stream()
                .findFirst();
    }

    /** An answer of a witness. */
    record Event(Instant at, String witness, long size, int status, String detail) {}

    /** The newest answer of each witness. */
    List<Event> newest() {
        return Sql.of(database, text.statement("newest")).rows(Event.class);
    }
}
