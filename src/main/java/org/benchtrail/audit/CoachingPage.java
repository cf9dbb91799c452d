package org.benchtrail.audit;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.platform.Html;
import org.jboss.resteasy.reactive.RestPath;

/** What people have read of the reviews of their own work, for the supervisor or mentor who talks about it with them. */
@Path("/audit-coaching")
@Authenticated
public class CoachingPage {
    private final ReviewCoaching coaching;
    private final CurrentActor current;

    CoachingPage(ReviewCoaching coaching, CurrentActor current) {
        this.coaching = coaching;
        this.current = current;
    }

    @CheckedTemplate(basePath = "audit")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance coaching(List<ReviewCoaching.Person> people);

        static native TemplateInstance coached(ReviewCoaching.Shown v);
    }

    @GET
    @Blocking
    public Response people() {
        return Html.ok(Templates.coaching(coaching.people(current.actor())));
    }

    @GET
    @Path("{login}")
    @Blocking
    public Response person(@RestPath String login) {
        return Html.ok(Templates.coached(coaching.of(login, current.actor())));
    }
}
