package org.benchtrail.webhook;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.platform.Html;

/** Which programs are told of changes, and whether they take it, for those who answer for the record. */
@Path("/webhooks")
@Authenticated
public class WebhookPage {
    private final WebhookQueries queries;
    private final CurrentActor current;

    WebhookPage(WebhookQueries queries, CurrentActor current) {
        this.queries = queries;
        this.current = current;
    }

    @CheckedTemplate(basePath = "webhook")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance webhooks(WebhookView v);
    }

    @GET
    @Blocking
    public Response show() {
        return Html.ok(Templates.webhooks(queries.view(current.actor(), current.zone())));
    }
}
