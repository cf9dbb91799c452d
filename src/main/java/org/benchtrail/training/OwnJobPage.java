package org.benchtrail.training;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;
import org.benchtrail.core.Invalid;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.platform.form.Refusal;
import org.benchtrail.platform.repeat.Repeats;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** Practice jobs that mentors write: saved as drafts, checked beside everything else, given to trainees, withdrawn. */
@Path("/own-jobs")
@Authenticated
@Blocking
public class OwnJobPage {
    private static final String EXAMPLE = "/training/own-job.yaml";
    private static final String STALE =
            "It was saved elsewhere meanwhile. What you typed is kept below: look at the newest text first.";
    private static final int SECONDS = 2;

    private final OwnJobActs acts;
    private final OwnJobQueries queries;
    private final OwnJobChecks checks;
    private final CurrentActor current;
    private final Repeats repeats;

    OwnJobPage(OwnJobActs acts, OwnJobQueries queries, OwnJobChecks checks, CurrentActor current, Repeats repeats) {
        this.acts = acts;
        this.queries = queries;
        this.checks = checks;
        this.current = current;
        this.repeats = repeats;
    }

    @CheckedTemplate(basePath = "training")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance ownJobs(List<OwnJobQueries.Line> jobs);

        static native TemplateInstance ownJob(
                OwnJobView v, List<OwnJobView.Reference> devices, List<Invalid.Problem> problems);
    }

    @GET
    @Blocking
    public Response list() {
        return Html.ok(Templates.ownJobs(queries.list(current.actor(), current.zone())));
    }

    /** A job to start from. */
    @GET
    @Path("new")
    @Blocking
    public Response fresh() {
        OwnJobActs.require(current.actor());
        return Html.ok(page(unsaved(example()), List.of()));
    }

    static String example() {
        try (InputStream in = OwnJobPage.class.getResourceAsStream(EXAMPLE)) {
            return new String(Objects.requireNonNull(in, EXAMPLE).readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private OwnJobView unsaved(String text) {
        return new OwnJobView(
                0,
                0,
                "A new practice job",
                "",
                text,
                List.of(),
                -1,
                "",
                null,
                List.of(),
                List.of(),
                List.of(),
                true,
                false,
                0);
    }

    private static TemplateInstance page(OwnJobView view, List<Invalid.Problem> problems) {
        return Templates.ownJob(view, OwnJobView.Reference.all(), problems);
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response create(MultivaluedMap<String, String> typed) {
        OwnJobActs.require(current.actor());
        PostedForm form = new PostedForm(typed);
        return Refusal.answer(
                () -> checked(form, () -> acts.create(form.asSent("text"), current.actor())),
                refusal -> page(unsaved(form.asSent("text")), refusal.problems()));
    }

    /** Saved first, whatever is wrong with it; what can be read is checked once that is committed. */
    private Response checked(PostedForm form, Supplier<OwnJobStore.Ref> saved) {
        AtomicReference<OwnJobStore.@Nullable Ref> now = new AtomicReference<>();
        Response answer = repeats.once(form, () -> {
            OwnJobStore.Ref ref = saved.get();
            now.set(ref);
            return Html.goTo("/own-jobs/" + ref.own());
        });
        OwnJobStore.Ref ref = now.get();
        if (ref != null) {
            OwnJobStore.Row row = acts.toCheck(ref.own(), current.actor());
            if (row.clean() == null) {
                OwnJobText.read(row.text()).job().ifPresent(job -> checks.begin(row.ref(), job));
            }
        }
        return answer;
    }

    /** While it is checked the page is fetched anew by itself. */
    @GET
    @Path("{id}")
    @Blocking
    public Response show(@RestPath int id, @RestQuery @DefaultValue("0") String version) {
        int asked = version.matches("\\d{1,6}") ? Integer.parseInt(version) : 0;
        OwnJobView view = queries.job(id, asked, current.actor(), current.zone());
        Response answer = Html.ok(page(view, List.of()));
        return view.checking() < 0
                ? answer
                : Response.fromResponse(answer).header("Refresh", SECONDS).build();
    }

    @POST
    @Path("{id}")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response save(@RestPath int id, MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return Refusal.answer(
                () -> checked(form, () -> acts.save(id, form.version(), form.asSent("text"), current.actor())),
                refusal -> page(
                        queries.job(id, 0, current.actor(), current.zone()).typed(form.asSent("text")),
                        refusal.isStale() ? List.of(new Invalid.Problem("", STALE)) : refusal.problems()));
    }

    /** Once more: a server was stopped before it had ended. */
    @POST
    @Path("{id}/check")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response check(@RestPath int id, MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return Refusal.answer(
                () -> checked(form, () -> acts.toCheck(id, current.actor()).ref()), refusal -> again(id, refusal));
    }

    @POST
    @Path("{id}/people")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response give(@RestPath int id, MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return Refusal.answer(
                () -> repeats.once(form, () -> {
                    acts.give(id, form.version(), form.text("person"), current.actor());
                    return Html.goTo("/own-jobs/" + id + "#people");
                }),
                refusal -> again(id, refusal));
    }

    @POST
    @Path("{id}/withdraw")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response withdraw(@RestPath int id, MultivaluedMap<String, String> typed) {
        return Refusal.answer(
                () -> {
                    acts.withdraw(id, current.actor());
                    return Html.goTo("/own-jobs/" + id);
                },
                refusal -> again(id, refusal));
    }

    private TemplateInstance again(int id, Refusal refusal) {
        return page(
                queries.job(id, 0, current.actor(), current.zone()),
                refusal.isStale() ? List.of(new Invalid.Problem("", STALE)) : refusal.problems());
    }
}
