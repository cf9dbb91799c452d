package org.benchtrail.seal;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.Readiness;

/**
 * Names to whoever watches the server how the log stands. It takes no node out of service: acts go on, and are sealed when it is put
 * right.
 */
@Readiness
@ApplicationScoped
class SealHealth implements HealthCheck {
    private final SealTroubles troubles;

    SealHealth(SealTroubles troubles) {
        this.troubles = troubles;
    }

    @Override
    public HealthCheckResponse call() {
        return HealthCheckResponse.named("seal").up().withData("state", state()).build();
    }

    private String state() {
        try {
            List<String> wrong = troubles.inShort();
            return wrong.isEmpty() ? "well" : "degraded: " + String.join(", ", wrong);
        } catch (RuntimeException away) {
            // that the database is away is another check's matter
            return "not known";
        }
    }
}
