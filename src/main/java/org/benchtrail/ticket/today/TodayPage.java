package org.benchtrail.ticket.today;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.platform.Html;

/** What waits for whoever is signed in: the first page. */
@Path("/")
@Authenticated
public class TodayPage {
    private final TodayQueries queries;
    private final CurrentActor current;

    TodayPage(TodayQueries queries, CurrentActor current) {
        this.queries = queries;
        this.current = current;
    }

    @CheckedTemplate(basePath = "ticket/today")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance today(TodayView v);
    }

    @GET
    @Blocking
    public Response home() {
        return Html.goTo("/today");
    }

    @GET
    @Path("today")
    @Blocking
    public Response today() {
        return Html.ok(Templates.today(queries.today(current.actor(), current.zone())));
    }
}
