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
 * is not so until somebody has made another one. While there is none to wait for although acts wait, no node is ready: every act would
 * hang.
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
        Waiting waiting = waiting();
        return HealthCheckResponse.named("second database")
                .status(waiting != Waiting.IN_VAIN)
                .withData("acts wait for it", waiting.words)
                .build();
    }

    private enum Waiting {
        YES("yes"),
        NO("no"),
        /** That the database is away is another check's matter. */
        NOT_KNOWN("not known"),
        IN_VAIN(
                "yes, and it is away: nothing can be recorded until it is back, or synchronous_standby_names is taken back");

        private final String words;

        Waiting(String words) {
            this.words = words;
        }
    }

    private Waiting waiting() {
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("select current_setting('synchronous_standby_names') <> '',"
                        + " exists (select from pg_stat_replication)")) {
            row.next();
            return !row.getBoolean(1) ? Waiting.NO : row.getBoolean(2) ? Waiting.YES : Waiting.IN_VAIN;
        } catch (SQLException away) {
            return Waiting.NOT_KNOWN;
        }
    }
}
