package org.benchtrail.training;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.form.PostedForm;
import org.jboss.resteasy.reactive.RestPath;

/** One's own forecasts and what they say; a mentor reads those of their trainees. */
@Path("/forecasts")
@Authenticated
public class ForecastsPage {
    private final ForecastsQueries queries;
    private final CurrentActor current;

    ForecastsPage(ForecastsQueries queries, CurrentActor current) {
        this.queries = queries;
        this.current = current;
    }

    @CheckedTemplate(basePath = "training")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance forecasts(ForecastsView v);
    }

    @GET
    @Blocking
    public Response own() {
        return Html.ok(Templates.forecasts(queries.own(current.actor(), current.zone())));
    }

    @GET
    @Path("{login}")
    @Blocking
    public Response ofTrainee(@RestPath String login) {
        return Html.ok(Templates.forecasts(queries.ofTrainee(login, current.actor(), current.zone())));
    }

    @POST
    @Path("erasures")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response erase(MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        queries.erase(form.text("ticket"), form.number("entry").orElse(0), current.actor());
        return Html.goTo("/forecasts");
    }
}
