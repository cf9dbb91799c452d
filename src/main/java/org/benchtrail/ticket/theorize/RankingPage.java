package org.benchtrail.ticket.theorize;

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
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** The ranking of a ticket's causes as any version of the catalogue gives it, with all its reasons. */
@Path("/tickets/{number}/ranking")
@Authenticated
public class RankingPage {
    private final RankingQueries queries;
    private final CurrentActor current;

    RankingPage(RankingQueries queries, CurrentActor current) {
        this.queries = queries;
        this.current = current;
    }

    @CheckedTemplate(basePath = "ticket/theorize")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance ranking(String number, String title, RankingView r);
    }

    @GET
    @Blocking
    public Response ranking(@RestPath String number, @RestQuery @Nullable Integer version) {
        RankingQueries.Ranked ranked = queries.ranked(TicketNumber.parse(number), version, current.actor());
        return Html.ok(Templates.ranking(number, ranked.title(), ranked.ranking()));
    }
}
