package org.benchtrail.ticket;

import io.quarkus.arc.Arc;
import io.quarkus.runtime.Startup;
import io.quarkus.vertx.http.runtime.CurrentVertxRequest;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.UUID;
import org.benchtrail.core.method.Channel;
import org.benchtrail.core.method.Origin;
import org.benchtrail.core.method.Policy;
import org.benchtrail.core.method.PolicyFingerprint;
import org.benchtrail.platform.RequestKind;
import org.benchtrail.site.PolicyConfig;
import org.jboss.logging.Logger;

/** How entries come to be made: by which door, in answer to which request, decided by which policy. */
@Startup
@ApplicationScoped
class Origins {
    private static final Logger LOG = Logger.getLogger(Origins.class);

    private final CurrentVertxRequest http;

    Origins(CurrentVertxRequest http, PolicyConfig config) {
        this.http = http;
        // the trail names the policy by its fingerprint; this line says what it was until the site decided otherwise
        LOG.infof("policy %s: %s", PolicyFingerprint.of(config.policy()), config.policy());
    }

    /** Of the entries that one call of {@link TicketActs} makes: a form, a body or an act of a file is one request. */
    Origin ofNewRequest(Policy policy) {
        return new Origin(channel(), UUID.randomUUID().toString(), PolicyFingerprint.of(policy), null);
    }

    /** What acts without being asked over HTTP is a file that is loaded. */
    private Channel channel() {
        RoutingContext asked = Arc.container().requestContext().isActive() ? http.getCurrent() : null;
        if (asked == null) {
            return Channel.IMPORT;
        }
        return RequestKind.isApi(asked) ? Channel.API : Channel.PAGE;
    }

    /** What was asked for, in a line: the address of a request tells no more than where it went. */
    String asked() {
        RoutingContext asked = Arc.container().requestContext().isActive() ? http.getCurrent() : null;
        return asked == null ? "a file" : asked.request().method() + " " + asked.normalizedPath();
    }
}
