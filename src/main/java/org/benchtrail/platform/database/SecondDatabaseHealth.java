package org.benchtrail.platform.database;

import io.agroal.api.AgroalDataSource;
import jakarta.enterprise.context.ApplicationScoped;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.Readiness;

/**
 * Names to whoever watches the server whether an act is acknowledged only once a second database has it too: after a failover that
 * is not so until somebody has made another one. It takes no node out of service.
 */
@Readiness
@ApplicationScoped
class SecondDatabaseHealth implements HealthCheck {
    private final AgroalDataSource database;

    SecondDatabaseHealth(AgroalDataSource database) {
        this.database = database;
    }

    @Override
    public HealthCheckResponse call() {
        return HealthCheckResponse.named("second database")
                .up()
                .withData("acts wait for it", waiting())
                .build();
    }

    private String waiting() {
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement();
                ResultSet names = statement.executeQuery("show synchronous_standby_names")) {
            return names.next() && !names.getString(1).isBlank() ? "yes" : "no";
        } catch (SQLException away) {
            // that the database is away is another check's matter
            return "not known";
        }
    }
}
