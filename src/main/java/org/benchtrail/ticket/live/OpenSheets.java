package org.benchtrail.ticket.live;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.Startup;
import io.smallrye.mutiny.Multi;
import io.smallrye.mutiny.infrastructure.Infrastructure;
import io.smallrye.mutiny.subscription.MultiEmitter;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.persistence.EntityManager;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.Directory;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.NotFound;
import org.benchtrail.platform.database.DatabaseNews.News;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.jboss.logging.Logger;

/** The job sheets that are open on this node, and through the database on every other one. */
@Startup
@ApplicationScoped
public class OpenSheets {
    private static final Logger LOG = Logger.getLogger(OpenSheets.class);
    private static final Duration FORGOTTEN = Duration.ofMinutes(1);

    private final EntityManager database;
    private final Directory people;
    private final Clock clock;
    private final SqlText text;
    private final String node = UUID.randomUUID().toString();
    private final Map<String, Watcher> watchers = new ConcurrentHashMap<>();

    OpenSheets(EntityManager database, Directory people, Clock clock) {
        this.database = database;
        this.people = people;
        this.clock = clock;
        text = SqlText.of(OpenSheets.class).having("opened", "closed", "still open", "state");
    }

    /** Somebody who has a sheet open, and how to reach them. */
    private record Watcher(TicketNumber ticket, Actor person, MultiEmitter<? super SheetState> told) {}

    private record State(int version, String accounts) {}

    /**
     * The state of the sheet now and after every change, until the reader goes away.
     *
     * @throws NotFound if there is no such ticket
     */
    public Multi<SheetState> watched(TicketNumber ticket, Actor person) {
        Permissions.require(Permission.SEE_TICKETS, person);
        String connection = UUID.randomUUID().toString();
        int opened = QuarkusTransaction.requiringNew()
                .call(() -> of("opened")
                        .with("connection", connection)
                        .with("node", node)
                        .with("ticket", ticket.serial())
                        .with("account", person.account())
                        .with("until", clock.instant().plus(FORGOTTEN))
                        .run());
        if (opened == 0) {
            throw new NotFound("ticket " + ticket);
        }
        return Multi.createFrom().emitter(told -> {
            watchers.put(connection, new Watcher(ticket, person, told));
            told.onTermination(() -> inBackground(() -> close(connection)));
            inBackground(() -> tell(ticket.serial()));
        });
    }

    void hear(@Observes News news) {
        if (news.about() == 0) {
            watchers.values().stream()
                    .map(w -> w.ticket().serial())
                    .distinct()
                    .forEach(serial -> inBackground(() -> tell(serial)));
            if (!watchers.isEmpty()) {
                inBackground(this::stayOpen);
            }
        } else if (watchers.values().stream().anyMatch(w -> w.ticket().serial() == news.about())) {
            inBackground(() -> tell(news.about()));
        }
    }

    void stop(@Observes ShutdownEvent stop) {
        watchers.values().forEach(w -> w.told().complete());
    }

    private void tell(int serial) {
        List<Watcher> own = watchers.values().stream()
                .filter(w -> w.ticket().serial() == serial)
                .toList();
        if (own.isEmpty()) {
            return;
        }
        QuarkusTransaction.requiringNew().run(() -> {
            State state = of("state")
                    .with("ticket", serial)
                    .with("now", clock.instant())
                    .row(State.class)
                    .orElseThrow();
            List<String> accounts = Stream.of(state.accounts().split(" "))
                    .filter(a -> !a.isEmpty())
                    .toList();
            Map<String, String> names = people.names(accounts);
            own.forEach(w -> w.told()
                    .emit(new SheetState(
                            state.version(),
                            accounts.stream()
                                    .filter(a -> !a.equals(w.person().account()))
                                    .map(a -> names.getOrDefault(a, a))
                                    .sorted()
                                    .toList())));
        });
    }

    /** So that the other nodes know that this one still runs. */
    private void stayOpen() {
        Instant now = clock.instant();
        QuarkusTransaction.requiringNew()
                .run(() -> of("still open")
                        .with("node", node)
                        .with("now", now)
                        .with("until", now.plus(FORGOTTEN))
                        .run());
    }

    private void close(String connection) {
        watchers.remove(connection);
        QuarkusTransaction.requiringNew()
                .run(() -> of("closed").with("connection", connection).run());
    }

    private Sql of(String statement) {
        return Sql.of(database, text.statement(statement));
    }

    private static void inBackground(Runnable work) {
        Infrastructure.getDefaultWorkerPool().execute(() -> {
            try {
                work.run();
            } catch (RuntimeException e) {
                LOG.debugf(e, "who has a sheet open is not known for now");
            }
        });
    }
}
