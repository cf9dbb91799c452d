package org.benchtrail.platform.nodes;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import io.smallrye.mutiny.infrastructure.Infrastructure;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.persistence.EntityManager;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.benchtrail.platform.database.DatabaseNews.News;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/** Which servers run on the database, and of which release each is. This one says every now and then that it still runs. */
@ApplicationScoped
public class Nodes {
    private static final Logger LOG = Logger.getLogger(Nodes.class);
    private static final Duration REMEMBERED = Duration.ofDays(90);

    private final EntityManager database;
    private final Clock clock;
    private final SqlText text;
    private final String id = UUID.randomUUID().toString();
    private final Release own;

    Nodes(
            EntityManager database,
            Clock clock,
            @ConfigProperty(name = "quarkus.application.version", defaultValue = "0") String release) {
        this.database = database;
        this.clock = clock;
        own = new Release(release);
        text = SqlText.of(Nodes.class).having("begin", "forget", "seen", "end", "releases", "all");
    }

    /**
     * A server.
     *
     * @param seen when it last said that it runs
     * @param ended when it was told to end; null if it runs, or died
     */
    public record Node(
            String host,
            String release,
            Instant started,
            Instant seen,
            @Nullable Instant ended) {}

    void start(@Observes StartupEvent start) {
        Instant now = clock.instant();
        QuarkusTransaction.requiringNew().run(() -> {
            of("forget").with("before", now.minus(REMEMBERED)).run();
            of("begin")
                    .with("id", id)
                    .with("host", host())
                    .with("release", own.name())
                    .with("now", now)
                    .run();
        });
    }

    void hear(@Observes News news) {
        if (news.about() == 0) {
            Infrastructure.getDefaultWorkerPool().execute(() -> tell("seen"));
        }
    }

    void stop(@Observes ShutdownEvent stop) {
        tell("end");
    }

    private void tell(String statement) {
        try {
            QuarkusTransaction.requiringNew()
                    .run(() -> of(statement)
                            .with("id", id)
                            .with("now", clock.instant())
                            .run());
        } catch (RuntimeException away) {
            LOG.debugf(away, "the table of servers was not told");
        }
    }

    /** Whether a server of a later release has run on the database: then it may have written what this one cannot read. */
    public boolean isLaterSeen() {
        return of("releases").values(String.class).stream().map(Release::new).anyMatch(one -> one.compareTo(own) > 0);
    }

    /** Those that were there last, the first 100. */
    public List<Node> all() {
        return QuarkusTransaction.requiringNew().call(() -> of("all").rows(Node.class));
    }

    private Sql of(String statement) {
        return Sql.of(database, text.statement(statement));
    }

    private static String host() {
        try {
            return InetAddress.getLocalHost().getHostName();
        } catch (UnknownHostException nameless) {
            return "";
        }
    }
}
