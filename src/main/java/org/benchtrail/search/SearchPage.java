package org.benchtrail.search;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import java.util.Optional;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.form.Refusal;
import org.jboss.resteasy.reactive.RestQuery;

/** One search over everything that is written down. */
@Path("/search")
@Authenticated
public class SearchPage {
    private final SearchQueries queries;
    private final CurrentActor current;

    SearchPage(SearchQueries queries, CurrentActor current) {
        this.queries = queries;
        this.current = current;
    }

    @CheckedTemplate(basePath = "search")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance search(FoundView v);
    }

    /** What was found; the number of a ticket leads to the ticket itself. */
    @GET
    @Blocking
    public Response search(@RestQuery @DefaultValue("") String q) {
        String typed = q.strip();
        return Refusal.answer(
                () -> {
                    Optional<TicketNumber> numbered = queries.numbered(typed, current.actor());
                    return numbered.isPresent()
                            ? Html.goTo("/tickets/" + numbered.get())
                            : Html.ok(Templates.search(queries.find(typed, current.actor(), current.zone())));
                },
                refusal -> Templates.search(FoundView.refused(typed, refusal.problems())));
    }
}
