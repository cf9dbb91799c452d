package org.benchtrail;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.ConnectException;
import java.net.SocketTimeoutException;
import java.net.UnknownHostException;
import java.nio.file.NoSuchFileException;
import java.sql.SQLException;
import java.util.Optional;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.platform.StartRefused;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class StartFailureTest {
    static Stream<Arguments> failures() {
        return Stream.of(
                Arguments.of(
                        new SQLException("ERROR: relation \"ticket\" does not exist", "42P01"),
                        "run the command migrate first"),
                Arguments.of(
                        new SQLException("FATAL: password authentication failed", "28P01"),
                        "does not let this account in"),
                Arguments.of(new SQLException("FATAL: database \"shop\" does not exist", "3D000"), "no such database"),
                Arguments.of(
                        new SQLException("ERROR: permission denied for schema public", "42501"),
                        "BENCHTRAIL_OWNER_USER"),
                Arguments.of(
                        new SQLException("ERROR: The database lacks the account x.", "BT002"), "The database lacks"),
                Arguments.of(new SQLException("The connection attempt failed.", "08001"), "cannot be reached"),
                Arguments.of(
                        new SQLException(
                                "Could not open SSL root certificate file /root/.postgresql/root.crt.", "08006"),
                        "&sslrootcert=FILE"),
                Arguments.of(
                        new SQLException("I/O error", "08006", new SocketTimeoutException("Read timed out")),
                        "synchronous_standby_names"),
                Arguments.of(
                        new SQLException("no connection", "08001", new UnknownHostException("db.shop.invalid")),
                        "db.shop.invalid"),
                Arguments.of(
                        new SQLException("no connection", "08001", new ConnectException("refused")), "Nothing answers"),
                Arguments.of(new NoSuchFileException("/etc/nothing.crt"), "/etc/nothing.crt"),
                Arguments.of(new Invalid("password", "Choose a longer one."), "password: Choose a longer one."),
                Arguments.of(new StartRefused("It is so."), "It is so."));
    }

    @ParameterizedTest
    @MethodSource("failures")
    void whatIsKnown_isASentence_howeverDeepItLies(Exception known, String told) {
        RuntimeException atCommit = new RuntimeException("could not commit");
        atCommit.addSuppressed(known);
        for (Throwable failure : new Throwable[] {known, new RuntimeException("not started", known), atCommit}) {
            String sentence = StartFailure.sentence(failure).orElse("");
            assertTrue(sentence.contains(told), sentence);
            assertEquals(1, sentence.lines().count(), sentence);
        }
    }

    @Test
    void whatIsNotKnown_isNone() {
        assertEquals(Optional.empty(), StartFailure.sentence(new IllegalStateException("a fault of ours")));
        assertEquals(Optional.empty(), StartFailure.sentence(new SQLException("division by zero", "22012")));
    }
}
