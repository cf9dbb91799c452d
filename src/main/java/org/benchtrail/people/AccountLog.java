package org.benchtrail.people;

import io.quarkus.arc.Arc;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.vertx.http.runtime.CurrentVertxRequest;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Singleton;
import jakarta.persistence.EntityManager;
import java.time.Clock;
import java.time.Duration;
import java.util.Objects;
import org.benchtrail.platform.RefusedDoor;

/**
 * Adds lines to the record of what was done to accounts, and of what they tried without being allowed to, within the transaction
 * that does it; nothing else can be done to it.
 */
@Singleton
public class AccountLog {
    /** Who acts when no person does. */
    static final String SERVER = "(server)";

    /** What a changed name is noted as; the detail is the name of before. */
    static final String RENAMED = "name changed from";

    private static final String REFUSED = "refused";
    private static final Duration SAME_REFUSAL = Duration.ofMinutes(1);

    private final EntityManager database;
    private final Clock clock;
    private final CurrentVertxRequest http;

    AccountLog(EntityManager database, Clock clock, CurrentVertxRequest http) {
        this.database = database;
        this.clock = clock;
        this.http = http;
    }

    /** Once a minute for the same, in a transaction of its own: what was refused is taken back. */
    void refused(@Observes RefusedDoor refused) {
        QuarkusTransaction.requiringNew().run(() -> {
            long lately = database.createQuery(
                            "select count(*) from AccountRecord r where r.about = :about and r.what = :what"
                                    + " and r.detail = :detail and r.at > :since",
                            Long.class)
                    .setParameter("about", refused.account())
                    .setParameter("what", REFUSED)
                    .setParameter("detail", refused.door())
                    .setParameter("since", clock.instant().minus(SAME_REFUSAL))
                    .getSingleResult();
            if (lately == 0) {
                note(refused.account(), REFUSED, refused.account(), refused.door());
            }
        });
    }

    /** @param detail what exactly, in words; never a secret */
    public void note(String who, String what, String about, String detail) {
        AccountRecord line = new AccountRecord();
        line.at = clock.instant();
        line.who = who;
        line.what = what;
        line.about = about;
        line.detail = detail;
        line.address = address();
        database.persist(line);
    }

    /** From where it was asked for; empty if nobody asked over the network. */
    private String address() {
        RoutingContext asked = Arc.container().requestContext().isActive() ? http.getCurrent() : null;
        return asked == null
                ? ""
                : Objects.requireNonNullElse(asked.request().remoteAddress().hostAddress(), "");
    }
}
