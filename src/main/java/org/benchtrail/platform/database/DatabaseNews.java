package org.benchtrail.platform.database;

import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.enterprise.event.Observes;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.concurrent.TimeUnit;
import javax.sql.DataSource;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;
import org.postgresql.PGConnection;
import org.postgresql.PGNotification;

/**
 * Hears on this node what any node tells through the database, and passes it on as {@link News}. It is word that something
 * changed, never the only way to learn it: what is told while the database is away is not heard, and after that everybody is
 * told to look.
 */
@ApplicationScoped
public class DatabaseNews {
    private static final Logger LOG = Logger.getLogger(DatabaseNews.class);
    private static final int LISTENING_MS = 500;
    private static final int PAUSE_S = 1;
    private static final long LOOK_S = 20;

    private final DataSource database;
    private final Event<News> heard;
    private volatile @Nullable Thread listening;
    private long looked;

    DatabaseNews(DataSource database, Event<News> heard) {
        this.database = database;
        this.heard = heard;
    }

    /**
     * What was told.
     *
     * @param about serial number of a ticket; 0 every now and then, and when anything may have been told unheard
     */
    public record News(int about) {}

    void start(@Observes StartupEvent start) {
        Thread thread = new Thread(this::listen, "database-news");
        thread.setDaemon(true);
        listening = thread;
        thread.start();
    }

    void stop(@Observes ShutdownEvent stop) {
        Thread thread = listening;
        listening = null;
        if (thread != null) {
            join(thread);
        }
    }

    private void listen() {
        while (listening != null) {
            try (Connection connection = database.getConnection();
                    Statement statement = connection.createStatement()) {
                statement.execute("listen ticket");
                lookAgain();
                PGConnection ears = connection.unwrap(PGConnection.class);
                while (listening != null) {
                    pass(ears.getNotifications(LISTENING_MS));
                }
            } catch (SQLException e) {
                LOG.debugf(e, "the database does not answer; asked again in %d s", PAUSE_S);
                pause();
            }
        }
    }

    private void pass(PGNotification @Nullable [] told) {
        if (told != null) {
            for (PGNotification one : told) {
                tell(Integer.parseInt(one.getParameter()));
            }
        }
        if (System.nanoTime() - looked > TimeUnit.SECONDS.toNanos(LOOK_S)) {
            lookAgain();
        }
    }

    private void lookAgain() {
        looked = System.nanoTime();
        tell(0);
    }

    private void tell(int about) {
        try {
            heard.fire(new News(about));
        } catch (RuntimeException e) {
            LOG.debugf(e, "word of a change was not passed on");
        }
    }

    /** It looks up twice a second, so that the connection is given back before the database is left. */
    private static void join(Thread thread) {
        try {
            thread.join(TimeUnit.SECONDS.toMillis(2));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static void pause() {
        try {
            TimeUnit.SECONDS.sleep(PAUSE_S);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
