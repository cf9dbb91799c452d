package org.benchtrail.ticket;

import io.quarkus.arc.Arc;
import io.quarkus.runtime.Startup;
import io.quarkus.vertx.http.runtime.CurrentVertxRequest;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.UUID;
import org.benchtrail.core.method.Channel;
import org.benchtrail.core.method.Origin;
import org.benchtrail.platform.RequestKind;
import org.jboss.logging.Logger;

/** How entries come to be made: by which door, in answer to which request, decided by which policy. */
@Startup
@ApplicationScoped
class Origins {
    private static final Logger LOG = Logger.getLogger(Origins.class);

    private final CurrentVertxRequest http;
    private final String policy;

    Origins(CurrentVertxRequest http, PolicyConfig policy) {
        this.http = http;
        this.policy = PolicyFingerprint.of(policy.policy());
        // the trail names the policy by its fingerprint; this line says what it was
        LOG.infof("policy %s: %s", this.policy, policy.policy());
    }

    /** Of the entries that one call of {@link TicketActs} makes: a form, a body or an act of a file is one request. */
    Origin ofNewRequest() {
        return new Origin(channel(), UUID.randomUUID().toString(), policy, null);
    }

    /** What acts without being asked over HTTP is a file that is loaded. */
    private Channel channel() {
        RoutingContext asked = Arc.container().requestContext().isActive() ? http.getCurrent() : null;
        if (asked == null) {
            return Channel.IMPORT;
        }
        return RequestKind.isApi(asked) ? Channel.API : Channel.PAGE;
    }
}
