package org.benchtrail.seal;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import io.smallrye.mutiny.infrastructure.Infrastructure;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.benchtrail.core.method.Actor;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Html;

/** The seal, for those who answer for the record. */
@Path("/seal")
@Authenticated
public class SealPage {
    private final SealQueries queries;
    private final SiteVerification verification;
    private final CurrentActor current;

    SealPage(SealQueries queries, SiteVerification verification, CurrentActor current) {
        this.queries = queries;
        this.verification = verification;
        this.current = current;
    }

    @CheckedTemplate(basePath = "seal")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance seal(SealView v);
    }

    @GET
    @Blocking
    public Response seal() {
        return Html.ok(Templates.seal(queries.view(current.actor(), current.zone())));
    }

    /** Looks at the whole site, beside everything else; if that is going on already, it goes on. */
    @POST
    @Path("looks")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response look() {
        Actor actor = allowed();
        if (verification.begin(actor)) {
            Infrastructure.getDefaultExecutor().execute(() -> verification.work(actor));
        }
        return Html.goTo("/seal");
    }

    @POST
    @Path("looks/end")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response stop() {
        allowed();
        verification.stop();
        return Html.goTo("/seal");
    }

    private Actor allowed() {
        Actor actor = current.actor();
        Permissions.require(Permission.SEE_ALARMS, actor);
        return actor;
    }
}
