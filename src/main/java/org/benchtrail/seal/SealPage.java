package org.benchtrail.seal;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import io.smallrye.mutiny.infrastructure.Infrastructure;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.benchtrail.core.method.Actor;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Html;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestQuery;

/** The seal, for those who answer for the record. */
@Path("/seal")
@Authenticated
public class SealPage {
    private final SealQueries queries;
    private final SiteVerification verification;
    private final LostNote note;
    private final CurrentActor current;

    SealPage(SealQueries queries, SiteVerification verification, LostNote note, CurrentActor current) {
        this.note = note;
        this.queries = queries;
        this.verification = verification;
        this.current = current;
    }

    @CheckedTemplate(basePath = "seal")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance seal(SealView v);

        static native TemplateInstance heads(List<SealView.HeadLine> heads, String from, long more);
    }

    @GET
    @Blocking
    public Response seal() {
        return Html.ok(Templates.seal(queries.view(current.actor(), current.zone())));
    }

    /** Earlier heads, from the one with so many leaves downwards; from the newest where that is no number. */
    @GET
    @Path("heads")
    @Blocking
    public Response heads(@RestQuery @DefaultValue("") String from) {
        long largest = from.matches("\\d{1,18}") ? Long.parseLong(from) : Long.MAX_VALUE;
        List<SealView.HeadLine> heads = queries.heads(largest, current.actor(), current.zone());
        long last = heads.isEmpty() ? 0 : heads.get(heads.size() - 1).size();
        return Html.ok(Templates.heads(heads, from, heads.size() == SealQueries.PAGE ? last - 1 : 0));
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

    /** An administrator says why the log goes on although the note beside its key is gone. */
    @POST
    @Path("note")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response goOnWithoutNote(@RestForm @DefaultValue("") String reason) {
        note.confirm(reason, current.actor());
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
