package org.benchtrail.ticket.queue;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.Optional;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.form.PostedForm;

/** The queue of tickets. */
@Path("/")
@Authenticated
public class QueuePage {
    private final QueueQueries queries;
    private final CurrentActor current;

    QueuePage(QueueQueries queries, CurrentActor current) {
        this.queries = queries;
        this.current = current;
    }

    @CheckedTemplate(basePath = "ticket/queue")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance queue(QueueView v);
    }

    @GET
    @Path("queue")
    @Blocking
    public Response queue(UriInfo address) {
        QueueAsked asked = new PostedForm(address.getQueryParameters()).read(QueueAsked.class);
        Optional<TicketNumber> numbered = queries.numbered(asked, current.actor());
        if (numbered.isPresent()) {
            return Html.goTo("/tickets/" + numbered.get());
        }
        return Html.ok(Templates.queue(queries.queue(asked, current.actor(), current.zone())));
    }
}
