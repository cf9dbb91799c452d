package org.benchtrail.ticket.entry;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.platform.Html;
import org.jboss.resteasy.reactive.RestPath;

/** Every entry of a ticket, and whether the chain holds. */
@Path("/tickets/{number}/trail")
@Authenticated
public class TrailPage {
    private final EntryQueries queries;
    private final CurrentActor current;

    TrailPage(EntryQueries queries, CurrentActor current) {
        this.queries = queries;
        this.current = current;
    }

    @CheckedTemplate(basePath = "ticket/entry")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance trail(TrailView v);
    }

    @GET
    @Blocking
    public Response trail(@RestPath String number) {
        return Html.ok(Templates.trail(queries.trail(TicketNumber.parse(number), current.actor(), current.zone())));
    }
}
