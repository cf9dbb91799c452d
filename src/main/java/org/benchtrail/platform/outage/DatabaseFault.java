package org.benchtrail.platform.outage;

import jakarta.transaction.HeuristicMixedException;
import jakarta.transaction.HeuristicRollbackException;
import jakarta.transaction.RollbackException;
import java.net.SocketException;
import java.sql.SQLException;
import java.sql.SQLTransientConnectionException;
import java.util.Optional;
import java.util.Set;
import javax.transaction.xa.XAException;
import org.benchtrail.platform.Causes;

/** In which way the database failed a request. */
public enum DatabaseFault {
    /** It could not be asked, or was gone before anything was to be made lasting: nothing was recorded. */
    AWAY,
    /** It was gone while what had been done was made lasting: nobody here knows whether it was. */
    UNCERTAIN;

    /**
     * Classes of SQLSTATE (ISO 9075, and PostgreSQL's appendix of error codes): no connection; not enough disk, memory or
     * connections; ended by an operator, starting, or stopping; failures of the system around it.
     */
    private static final Set<String> CLASSES = Set.of("08", "53", "57", "58");

    /** A statement that somebody cancelled, and one that took too long: of class 57, and no outage. */
    private static final Set<String> ANSWERED = Set.of("57014", "57P05");

    /** A transaction that may only read: the server has become a standby. */
    private static final String READ_ONLY = "25006";

    /** What the pool says in words alone when it has no connection to give. */
    private static final String POOL = "Acquisition timeout";

    /** Empty if the failure has another reason than the database's absence. */
    public static Optional<DatabaseFault> of(Throwable failure) {
        Set<Throwable> causes = Causes.of(failure);
        return causes.stream().noneMatch(DatabaseFault::isGone)
                ? Optional.empty()
                : Optional.of(causes.stream().anyMatch(DatabaseFault::isAtCommit) ? UNCERTAIN : AWAY);
    }

    private static boolean isAtCommit(Throwable one) {
        return one instanceof RollbackException
                || one instanceof HeuristicMixedException
                || one instanceof HeuristicRollbackException;
    }

    private static boolean isGone(Throwable one) {
        if (one instanceof XAException broken) {
            return broken.errorCode == XAException.XAER_RMFAIL;
        }
        if (one instanceof SQLException sql) {
            String state = sql.getSQLState();
            return state == null
                    ? sql instanceof SQLTransientConnectionException || says(sql, POOL)
                    : state.equals(READ_ONLY)
                            || (state.length() == 5
                                    && CLASSES.contains(state.substring(0, 2))
                                    && !ANSWERED.contains(state));
        }
        return one instanceof SocketException && one.getStackTrace().length > 0 && isOfTheDriver(one);
    }

    private static boolean says(SQLException failure, String words) {
        return failure.getMessage() != null && failure.getMessage().contains(words);
    }

    private static boolean isOfTheDriver(Throwable failure) {
        return java.util.Arrays.stream(failure.getStackTrace())
                .anyMatch(frame -> frame.getClassName().startsWith("org.postgresql."));
    }
}
