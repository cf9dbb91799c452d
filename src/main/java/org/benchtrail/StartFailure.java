package org.benchtrail;

import io.smallrye.config.ConfigValidationException;
import java.net.ConnectException;
import java.net.SocketTimeoutException;
import java.net.UnknownHostException;
import java.nio.file.NoSuchFileException;
import java.sql.SQLException;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.benchtrail.core.Invalid;
import org.benchtrail.platform.Causes;
import org.benchtrail.platform.StartRefused;

/** What to tell whoever started the server, or a command, when it does not start. */
final class StartFailure {
    /** SQLSTATE (PostgreSQL's appendix of error codes): no such table, column, function or schema. */
    private static final Set<String> NOT_MIGRATED = Set.of("42P01", "42703", "42883", "3F000");

    private static final Set<String> NOT_LET_IN = Set.of("28P01", "28000");
    private static final String NO_DATABASE = "3D000";
    private static final String NO_RIGHT = "42501";
    /** A migration says itself what has to be done before it, see own-accounts.sql. */
    private static final String SAYS_ITSELF = "BT002";

    private static final String NO_CONNECTION = "08";

    private StartFailure() {}

    /** A sentence that says what is wrong and what to do; empty if it is nothing that is known, which takes the whole trace. */
    static Optional<String> sentence(Throwable failure) {
        Set<Throwable> causes = Causes.of(failure);
        return first(causes, StartRefused.class, Throwable::getMessage)
                .or(() -> first(causes, Invalid.class, StartFailure::invalid))
                .or(() -> first(causes, ConfigValidationException.class, StartFailure::settings))
                .or(() -> first(
                        causes,
                        NoSuchFileException.class,
                        e -> "The settings name a file that is not there: " + e.getFile()))
                .or(() -> causes.stream()
                        .flatMap(one -> certificate(one).stream())
                        .findFirst())
                .or(() -> first(
                        causes,
                        SocketTimeoutException.class,
                        e -> "The database did not answer in time. If a second one"
                                + " follows it and is away, every commit waits for it: start the second again, or take"
                                + " synchronous_standby_names back."))
                .or(() -> first(
                        causes,
                        UnknownHostException.class,
                        e -> "The database's address is not known: " + e.getMessage()
                                + ". Look at BENCHTRAIL_DATABASE_URL."))
                .or(() -> first(
                        causes,
                        ConnectException.class,
                        e -> "Nothing answers at the database's address. Start the database,"
                                + " or look at BENCHTRAIL_DATABASE_URL."))
                .or(() -> causes.stream().flatMap(one -> database(one).stream()).findFirst());
    }

    private static <E extends Throwable> Optional<String> first(
            Set<Throwable> causes, Class<E> of, Function<E, String> words) {
        return causes.stream().filter(of::isInstance).map(of::cast).findFirst().map(words);
    }

    private static String invalid(Invalid e) {
        return e.problems().stream()
                .map(problem -> problem.field() + ": " + problem.sentence())
                .collect(Collectors.joining(" "));
    }

    private static String settings(ConfigValidationException e) {
        return IntStream.range(0, e.getProblemCount())
                .mapToObj(i -> e.getProblem(i).getMessage())
                .collect(Collectors.joining("\n"));
    }

    private static Optional<String> certificate(Throwable one) {
        return one instanceof SQLException
                        && one.getMessage() != null
                        && one.getMessage().contains("SSL root certificate")
                ? Optional.of(one.getMessage() + " Name it in BENCHTRAIL_DATABASE_URL: &sslrootcert=FILE.")
                : Optional.empty();
    }

    private static Optional<String> database(Throwable one) {
        if (!(one instanceof SQLException sql) || sql.getSQLState() == null) {
            return Optional.empty();
        }
        String said = String.valueOf(sql.getMessage()).lines().findFirst().orElse("");
        String state = sql.getSQLState();
        if (state.equals(SAYS_ITSELF)) {
            return Optional.of(said.replaceFirst("^ERROR: ", ""));
        }
        if (NOT_MIGRATED.contains(state)) {
            return Optional.of(
                    "The database has not the tables of this release: run the command migrate first. (" + said + ")");
        }
        if (NOT_LET_IN.contains(state)) {
            return Optional.of(
                    "The database does not let this account in: look at its name and password in the environment, and at"
                            + " pg_hba.conf. (" + said + ")");
        }
        if (state.equals(NO_DATABASE)) {
            return Optional.of(
                    "There is no such database: look at BENCHTRAIL_DATABASE_URL, or make it with roles.sql. (" + said
                            + ")");
        }
        if (state.equals(NO_RIGHT)) {
            return Optional.of("The account may not do that: BENCHTRAIL_OWNER_USER is the one that owns the schema,"
                    + " BENCHTRAIL_DATABASE_USER the server's. (" + said + ")");
        }
        return state.startsWith(NO_CONNECTION)
                ? Optional.of("The database cannot be reached: look at BENCHTRAIL_DATABASE_URL. (" + said + ")")
                : Optional.empty();
    }
}
