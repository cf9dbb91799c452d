package org.benchtrail.ticket.forecast;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.core.Response;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.RequestKind;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.platform.problem.Problem;
import org.benchtrail.platform.problem.ProblemKind;
import org.benchtrail.ticket.ForecastFirst;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;

/** What stands in place of what may not be seen yet: the form of the forecast, or for a program a problem that leads to it. */
@ApplicationScoped
public class VeiledDoor {
    private final ForecastQueries queries;
    private final CurrentActor current;

    VeiledDoor(ForecastQueries queries, CurrentActor current) {
        this.queries = queries;
        this.current = current;
    }

    @CheckedTemplate(basePath = "ticket/forecast")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance first(ForecastView f, FormValues fill, String title, String known);
    }

    @ServerExceptionMapper
    public Response veiled(ForecastFirst e, RoutingContext request) {
        Optional<ForecastQueries.Due> due = RequestKind.isApi(request)
                ? Optional.empty()
                : queries.due(e.ticket(), current.actor(), current.zone());
        if (due.isPresent()) {
            FormValues fill = new FormValues();
            due.get().forecast().fill(fill);
            return Html.status(
                    ProblemKind.FORECAST_FIRST.status(),
                    Templates.first(due.get().forecast(), fill, due.get().title(), e.known()));
        }
        Map<String, Object> members = new LinkedHashMap<>(
                Problem.of(ProblemKind.FORECAST_FIRST, e.sentence()).members());
        members.put("forecast", "/api/tickets/" + e.ticket() + "/forecasts");
        return Response.status(ProblemKind.FORECAST_FIRST.status())
                .entity(members)
                .type(Problem.MEDIA_TYPE)
                .build();
    }
}
