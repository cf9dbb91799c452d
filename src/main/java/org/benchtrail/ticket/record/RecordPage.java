package org.benchtrail.ticket.record;

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

/** The record of a ticket as a page to read or print. */
@Path("/tickets/{number}")
@Authenticated
public class RecordPage {
    private final RecordQueries queries;
    private final CurrentActor current;

    RecordPage(RecordQueries queries, CurrentActor current) {
        this.queries = queries;
        this.current = current;
    }

    @CheckedTemplate(basePath = "ticket/record")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance record(RecordView v);
    }

    @GET
    @Path("record")
    @Blocking
    public Response record(@RestPath String number) {
        return Html.ok(Templates.record(queries.record(TicketNumber.parse(number), current.actor(), current.zone())));
    }
}
