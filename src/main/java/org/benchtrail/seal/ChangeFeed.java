package org.benchtrail.seal;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;

/**
 * What happened on tickets, in the one order in which the log numbers it. A leaf is numbered after the transaction of its entry has
 * ended, by one node at a time and without a gap: what is committed later stands later, so that nobody who goes on from a number
 * misses what was begun before it.
 */
@Startup
@ApplicationScoped
public class ChangeFeed {
    public static final int MOST = 500;

    private final EntityManager database;
    private final SqlText text;

    ChangeFeed(EntityManager database) {
        this.database = database;
        text = SqlText.of(ChangeFeed.class).having("size", "after");
    }

    private record Row(long number, int ticket, int entry, String kind, Instant at, String by) {
        Change change() {
            return new Change(number, new TicketNumber(ticket).toString(), entry, kind, at, by);
        }
    }

    /**
     * An entry of a trail.
     *
     * @param number in the feed; others in between belong to what is no ticket
     * @param by account, or {@code server} where the server itself speaks
     */
    public record Change(long number, String ticket, int entry, String kind, Instant at, String by) {}

    /**
     * A part of the feed.
     *
     * @param next where to go on: after it comes all that is not in this part
     */
    public record Part(List<Change> changes, long next) {
        boolean isEmpty() {
            return changes.isEmpty();
        }
    }

    /**
     * What was numbered after that.
     *
     * @param after where the part before said to go on; 0 for the beginning
     * @throws Invalid if the log has not come so far, as after a backup was restored
     */
    public Part after(long after, int most) {
        return QuarkusTransaction.requiringNew().call(() -> {
            long size = Sql.of(database, text.statement("size")).value(Long.class);
            if (after > size) {
                throw new Invalid("after", "The log has come to " + size + " only: begin again from 0.");
            }
            List<Change> changes = Sql.of(database, text.statement("after"))
                    .with("after", after)
                    .with("size", size)
                    .with("most", most)
                    .rows(Row.class)
                    .stream()
                    .map(Row::change)
                    .toList();
            return new Part(
                    changes,
                    changes.size() < most ? size : changes.get(most - 1).number());
        });
    }
}
