package org.benchtrail.people;

import jakarta.ws.rs.container.ResourceInfo;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;

/** Turns away whoever may not come in, before any of the body is read. */
public class PermissionCheck {
    private final CurrentActor current;

    PermissionCheck(CurrentActor current) {
        this.current = current;
    }

    @ServerRequestFilter
    public void check(ResourceInfo resource) {
        NeedsPermission needs = resource.getResourceMethod() == null
                ? null
                : resource.getResourceMethod().getAnnotation(NeedsPermission.class);
        if (needs != null && current.signedIn()) {
            Permissions.require(needs.value(), current.actor());
        }
    }
}
