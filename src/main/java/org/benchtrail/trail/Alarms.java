package org.benchtrail.trail;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;

/** What was found not to hold, kept for good. An alarm ends when the record is looked at again and holds, not before. */
@Startup
@ApplicationScoped
public class Alarms {
    /** The same finding again within this time adds no line. */
    private static final Duration REPEATED = Duration.ofHours(1);

    private final EntityManager database;
    private final Clock clock;
    private final String add;
    private final String standing;
    private final String newest;

    Alarms(EntityManager database, Clock clock) {
        this.database = database;
        this.clock = clock;
        SqlText text = SqlText.of(Alarms.class);
        add = text.statement("add");
        standing = text.statement("standing");
        newest = text.statement("newest");
    }

    /**
     * One finding.
     *
     * @param holds whether the record was found to hold again
     * @param sentence for people
     * @param detail for whoever puts it right
     * @param seenBy account at whose act or look it was found
     */
    public record Line(int ticket, Instant at, boolean holds, String sentence, String detail, String seenBy) {}

    /** Adds a finding within the running transaction, unless it was found in the last hour. */
    public void found(TicketNumber ticket, boolean holds, String sentence, String detail, String seenBy) {
        Instant now = clock.instant();
        Sql.of(database, add)
                .with("ticket", ticket.serial())
                .with("at", now)
                .with("holds", holds)
                .with("sentence", sentence)
                .with("detail", detail)
                .with("by", seenBy)
                .with("since", now.minus(REPEATED))
                .run();
    }

    /** Tickets whose record did not hold when it was last looked at. */
    public List<Integer> standing() {
        return Sql.of(database, standing).values(Integer.class);
    }

    /** The newest findings, newest first; at most 200. */
    public List<Line> newest() {
        return Sql.of(database, newest).rows(Line.class);
    }
}
