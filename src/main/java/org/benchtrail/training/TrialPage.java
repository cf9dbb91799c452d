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
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.platform.form.Refusal;
import org.benchtrail.platform.repeat.Repeats;
import org.jboss.resteasy.reactive.RestPath;

/** Tests of whether work is worse without the coach: stated beforehand, taken part in, and read once they are over. */
@Path("/coach-tests")
@Authenticated
@Blocking
public class TrialPage {
    private final TrialActs acts;
    private final TrialQueries queries;
    private final CurrentActor current;
    private final Repeats repeats;

    TrialPage(TrialActs acts, TrialQueries queries, CurrentActor current, Repeats repeats) {
        this.acts = acts;
        this.queries = queries;
        this.current = current;
        this.repeats = repeats;
    }

    @CheckedTemplate(basePath = "training")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance trials(
                List<TrialView> trials, boolean stating, FormValues fill, List<Invalid.Problem> problems);
    }

    @GET
    @Blocking
    public Response trials() {
        return Html.ok(page(offered(), List.of()));
    }

    /** What a plan of eight people takes. */
    private static FormValues offered() {
        return new FormValues()
                .set("margin", "10")
                .set("expected", "90")
                .set("correlation", "5")
                .set("people", "8")
                .set("jobsEach", "2");
    }

    private TemplateInstance page(FormValues fill, List<Invalid.Problem> problems) {
        return Templates.trials(
                queries.all(current.actor(), current.zone()),
                Permissions.allow(Permission.STATE_TRIALS, current.actor()),
                fill,
                problems);
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response state(MultivaluedMap<String, String> typed) {
        Permissions.require(Permission.STATE_TRIALS, current.actor());
        PostedForm form = new PostedForm(typed);
        return Refusal.answer(
                () -> repeats.once(form, () -> {
                    acts.state(
                            new TrialActs.Asked(
                                    number(form, "margin"),
                                    number(form, "expected"),
                                    number(form, "correlation"),
                                    number(form, "people"),
                                    number(form, "jobsEach")),
                            current.actor());
                    return Html.goTo("/coach-tests");
                }),
                refusal -> page(new FormValues().typed(form, refusal), refusal.problems()));
    }

    private static int number(PostedForm form, String name) {
        return form.number(name).orElse(-1);
    }

    @POST
    @Path("{id}/people")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response agree(@RestPath int id, MultivaluedMap<String, String> typed) {
        return Refusal.answer(
                () -> {
                    acts.agree(id, current.actor());
                    return Html.goTo("/coach-tests");
                },
                refusal -> page(offered(), refusal.problems()));
    }

    /** The next of the viewer's own jobs. */
    @POST
    @Path("{id}/jobs")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response begin(@RestPath int id, MultivaluedMap<String, String> typed) {
        return Html.goTo("/practice/" + acts.begin(id, current.actor()));
    }

    /** For a live ticket that cannot wait. */
    @POST
    @Path("broken-off/{id}")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response breakOff(@RestPath int id, MultivaluedMap<String, String> typed) {
        acts.breakOff(id, current.actor());
        return Html.goTo("/coach-tests");
    }
}
