package org.benchtrail.platform.database;

import io.agroal.api.AgroalDataSource;
import jakarta.enterprise.context.ApplicationScoped;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.Duration;
import java.time.OffsetDateTime;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.Readiness;

/**
 * Names to whoever watches the server by how much its clock and the database's differ, where that is more than a minute: entries are
 * stamped by the server's. It takes no node out of service.
 */
@Readiness
@ApplicationScoped
class ClockHealth implements HealthCheck {
    private static final Duration AGREES = Duration.ofMinutes(1);

    private final AgroalDataSource database;
    private final Clock clock;

    ClockHealth(AgroalDataSource database, Clock clock) {
        this.database = database;
        this.clock = clock;
    }

    @Override
    public HealthCheckResponse call() {
        return HealthCheckResponse.named("clock")
                .up()
                .withData("against the database's", differs())
                .build();
    }

    private String differs() {
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("select clock_timestamp()")) {
            row.next();
            return words(Duration.between(
                    clock.instant(), row.getObject(1, OffsetDateTime.class).toInstant()));
        } catch (SQLException away) {
            // that the database is away is another check's matter
            return "not known";
        }
    }

    /** @param behind by how much the server's is behind */
    static String words(Duration behind) {
        if (behind.abs().compareTo(AGREES) <= 0) {
            return "agrees";
        }
        return behind.abs().toSeconds() + " s " + (behind.isNegative() ? "ahead" : "behind") + ": set both by NTP";
    }
}
