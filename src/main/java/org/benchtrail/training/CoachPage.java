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

/** All texts of the coach, for whoever asks; how much of them a trainee is shown, for the trainee and their mentor. */
@Path("/coach")
@Authenticated
public class CoachPage {
    private final CoachQueries queries;
    private final CurrentActor current;

    CoachPage(CoachQueries queries, CurrentActor current) {
        this.queries = queries;
        this.current = current;
    }

    @CheckedTemplate(basePath = "training")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance coach(CoachPageView v);
    }

    @GET
    @Blocking
    public Response own() {
        return Html.ok(Templates.coach(queries.own(current.actor())));
    }

    @GET
    @Path("{login}")
    @Blocking
    public Response ofTrainee(@RestPath String login) {
        return Html.ok(Templates.coach(queries.ofTrainee(login, current.actor())));
    }

    /** More or less of it, from now on. */
    @POST
    @Path("choices")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response choose(MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        String code = form.text("code");
        queries.choose(code, form.text("level"), current.actor());
        return Html.goTo(code.isEmpty() ? "/coach" : "/coach#" + code);
    }
}
