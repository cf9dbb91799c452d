package org.benchtrail.platform.room;

import jakarta.enterprise.context.ApplicationScoped;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.Readiness;

/** Names the room on the disk to whoever watches the server. A full disk takes no node out of service: all would go. */
@Readiness
@ApplicationScoped
class DiskHealth implements HealthCheck {
    private final Disk disk;

    DiskHealth(Disk disk) {
        this.disk = disk;
    }

    @Override
    public HealthCheckResponse call() {
        return HealthCheckResponse.named("disk")
                .up()
                .withData("room", disk.room().name())
                .withData("left", disk.left())
                .build();
    }
}
