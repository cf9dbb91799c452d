package org.benchtrail.webhook;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.jspecify.annotations.Nullable;

/** How far receivers have been told; everything within the running transaction. */
@Startup
@ApplicationScoped
class WebhookRows {
    private final EntityManager database;
    private final SqlText text;

    WebhookRows(EntityManager database) {
        this.database = database;
        text = SqlText.of(WebhookRows.class).having("claim", "told", "freed", "all");
    }

    /**
     * A receiver that this server tells now, and no other.
     *
     * @param next where to go on in the feed
     * @param failures how often in a row it did not take the message
     */
    record Claim(String name, long next, int failures) {}

    /** Takes a receiver until then; empty if another server tells it, or it is left alone for a while. */
    Optional<Claim> claim(String name, Instant now, Instant until) {
        return Sql.of(database, text.statement("claim"))
                .with("name", name)
                .with("now", now)
                .with("until", until)
                .rows(Claim.class)
                .stream()
                .findFirst();
    }

    /** Keeps what it answered, and from when on it may be told again. */
    void told(Claim stands, String answer, Instant at, Instant notBefore) {
        Sql.of(database, text.statement("told"))
                .with("name", stands.name())
                .with("next", stands.next())
                .with("failures", stands.failures())
                .with("answer", answer)
                .with("at", at)
                .with("notBefore", notBefore)
                .run();
    }

    /** Lets any server tell it again from then on: there is nothing more to tell up to {@code next}. */
    void freed(String name, long next, Instant notBefore) {
        Sql.of(database, text.statement("freed"))
                .with("name", name)
                .with("next", next)
                .with("notBefore", notBefore)
                .run();
    }

    /**
     * How a receiver stands.
     *
     * @param answered when it answered last; null if it was never told anything
     * @param size how far the feed has come
     */
    record State(
            String name,
            long next,
            Instant notBefore,
            int failures,
            @Nullable Instant answered,
            String answer,
            long size) {}

    /** All that were ever told, by name. */
    List<State> all() {
        return Sql.of(database, text.statement("all")).rows(State.class);
    }
}
