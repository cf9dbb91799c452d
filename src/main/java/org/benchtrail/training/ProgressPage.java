package org.benchtrail.training;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.paper.Paper;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** What one's work shows so far, for oneself and one's mentor; and as a record that one takes along, for oneself alone. */
@Path("/progress")
@Authenticated
public class ProgressPage {
    private final ProgressQueries queries;
    private final CurrentActor current;

    ProgressPage(ProgressQueries queries, CurrentActor current) {
        this.queries = queries;
        this.current = current;
    }

    @CheckedTemplate(basePath = "training")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance progress(ProgressView v);

        static native TemplateInstance progressPaper(ProgressView v);
    }

    @GET
    @Blocking
    public Response own() {
        return Html.ok(Templates.progress(queries.own(current.actor(), current.zone(), false)));
    }

    @GET
    @Path("{login}")
    @Blocking
    public Response ofTrainee(@RestPath String login) {
        return Html.ok(Templates.progress(queries.ofTrainee(login, current.actor(), current.zone())));
    }

    /** @param forecasts whether what was forecast is added */
    @GET
    @Path("record.pdf")
    @Blocking
    public Response paper(@RestQuery boolean forecasts) {
        ProgressView view = queries.own(current.actor(), current.zone(), forecasts);
        return Response.ok(Paper.pdf(Templates.progressPaper(view)), Paper.MEDIA_TYPE)
                .header("Content-Disposition", "inline; filename=\"record-of-training.pdf\"")
                .build();
    }
}
