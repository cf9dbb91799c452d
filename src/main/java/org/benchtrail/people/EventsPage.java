package org.benchtrail.people;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.benchtrail.platform.Html;
import org.jboss.resteasy.reactive.RestQuery;

/** What was done to accounts, and what was tried without being allowed, for administrators. */
@Path("/people-events")
@Authenticated
public class EventsPage {
    private final EventQueries queries;
    private final CurrentActor current;

    EventsPage(EventQueries queries, CurrentActor current) {
        this.queries = queries;
        this.current = current;
    }

    @CheckedTemplate(basePath = "people")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance events(List<EventQueries.Line> lines, String about, long next);
    }

    /**
     * @param about an account; empty for all
     * @param before number of the event after which to go on; 0 for the newest
     */
    @GET
    @Blocking
    public Response show(@RestQuery @DefaultValue("") String about, @RestQuery @DefaultValue("0") long before) {
        EventQueries.Part part = queries.part(current.actor(), about.strip(), before, current.zone());
        return Html.ok(Templates.events(part.lines(), about.strip(), part.next()));
    }
}
