package org.benchtrail.platform.outage;

import io.agroal.api.AgroalDataSource;
import io.agroal.api.AgroalDataSource.FlushMode;
import jakarta.inject.Singleton;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/**
 * The time in which the database does not answer: one line in the log when it begins and one at its end, however many requests
 * meet it. As long as it lasts the database is asked once a second.
 */
@Singleton
public class Outage {
    /** What callers are told to wait, in seconds. */
    public static final int RETRY_AFTER_S = 5;

    private static final Logger LOG = Logger.getLogger(Outage.class);
    private static final int LOOK_S = 1;

    private final AgroalDataSource database;
    private @Nullable Thread watching;
    private volatile @Nullable Throwable reason;
    private long refused;
    private long began;

    Outage(AgroalDataSource database) {
        this.database = database;
    }

    /** Why the database does not answer; empty if it does. Whoever is about to ask it need not wait for it in vain. */
    public Optional<Throwable> goesOn() {
        return Optional.ofNullable(reason);
    }

    /** A connection broke while something was made lasting: a line of its own, because somebody may have to look for it. */
    public void brokeAtCommit(Throwable failure, String path) {
        LOG.errorf("The connection to the database broke at a commit of %s (%s)", path, said(failure));
    }

    /** A request was refused because the database is away. */
    public synchronized void met(Throwable failure) {
        refused++;
        if (watching != null) {
            return;
        }
        reason = failure;
        began = System.nanoTime();
        LOG.errorf("The database does not answer (%s); requests are answered 503 until it does", said(failure));
        database.flush(FlushMode.IDLE);
        Thread thread = new Thread(this::watch, "database-outage");
        thread.setDaemon(true);
        watching = thread;
        thread.start();
    }

    private void watch() {
        do {
            try {
                TimeUnit.SECONDS.sleep(LOOK_S);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                return;
            }
        } while (!answers());
        ended();
    }

    private boolean answers() {
        try (Connection connection = database.getConnection()) {
            return connection.isValid(LOOK_S);
        } catch (SQLException stillAway) {
            return false;
        }
    }

    private synchronized void ended() {
        LOG.warnf(
                "The database answers again after %d s; %d requests were refused meanwhile",
                TimeUnit.NANOSECONDS.toSeconds(System.nanoTime() - began), refused);
        refused = 0;
        reason = null;
        watching = null;
    }

    /** The innermost sentence, cut to one line: never the statement or its values. */
    private static String said(Throwable failure) {
        Throwable inner = failure;
        for (int depth = 0; inner.getCause() != null && depth < 20; depth++) {
            inner = inner.getCause();
        }
        String said = inner.getMessage() == null ? inner.getClass().getSimpleName() : inner.getMessage();
        String line = said.lines().findFirst().orElse("");
        return line.length() > 120 ? line.substring(0, 120) : line;
    }
}
