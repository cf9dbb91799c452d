package org.benchtrail.seal;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.benchtrail.core.integrity.Hash;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.benchtrail.seal.timestamp.TimeStamp;

/** Time-stamps of heads, as they were answered; everything within the running transaction. */
@Startup
@ApplicationScoped
class TimeStampRows {
    private final EntityManager database;
    private final SqlText text;

    TimeStampRows(EntityManager database) {
        this.database = database;
        text = SqlText.of(TimeStampRows.class).having("keep", "newest", "all");
    }

    /**
     * A time-stamp of a head.
     *
     * @param at what it says, as {@code by}
     * @param hash of the answer, which is not signed as a whole
     * @param note the head
     */
    record Stamped(long size, Instant at, String by, String hash, byte[] answer, String note) {}

    /** Keeps the first time-stamp of a head. */
    void keep(long size, TimeStamp stamp, byte[] answer) {
        Sql.of(database, text.statement("keep"))
                .with("size", size)
                .with("at", stamp.at())
                .with("by", stamp.by())
                .with("hash", Hash.sha256(answer).hex())
                .with("answer", answer)
                .run();
    }

    /** The one of the largest head that has at most so many leaves. */
    Optional<Stamped> newest(long largest) {
        return Sql.of(database, text.statement("newest")).with("largest", largest).rows(Stamped.class).stream()
                .findFirst();
    }

    /** Those of heads after a size, the smallest first. */
    List<Stamped> all(long after, int most) {
        return Sql.of(database, text.statement("all"))
                .with("after", after)
                .with("most", most)
                .rows(Stamped.class);
    }
}
