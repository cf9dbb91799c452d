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
import java.util.Comparator;
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.platform.form.Refusal;
import org.benchtrail.platform.repeat.Repeats;

/** The questions of the day: one after the other, each told once it is answered. */
@Path("/recall")
@Authenticated
@Blocking
public class RecallPage {
    private final RecallQueries queries;
    private final CurrentActor current;
    private final Repeats repeats;

    RecallPage(RecallQueries queries, CurrentActor current, Repeats repeats) {
        this.queries = queries;
        this.current = current;
        this.repeats = repeats;
    }

    @CheckedTemplate(basePath = "training")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance recall(RecallView v, FormValues fill, List<Invalid.Problem> problems);
    }

    @GET
    @Blocking
    public Response today() {
        return Html.ok(page(new FormValues(), List.of()));
    }

    private TemplateInstance page(FormValues fill, List<Invalid.Problem> problems) {
        return Templates.recall(queries.today(current.actor(), current.zone()), fill, problems);
    }

    @POST
    @Path("answers")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response answer(MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return Refusal.answer(
                () -> repeats.once(form, () -> {
                    queries.answer(form.text("item"), answer(form), current.actor(), current.zone());
                    return Html.goTo("/recall#told");
                }),
                refusal -> page(new FormValues().typed(form, refusal), refusal.problems()));
    }

    /** What was chosen or typed, or what was put in order, by the places that it was given; none where two have one place. */
    private static List<String> answer(PostedForm form) {
        List<String> placed = form.filled("place.");
        if (placed.isEmpty()) {
            return form.all("answer");
        }
        List<String> ordered = placed.stream()
                .sorted(Comparator.comparingInt(id -> form.number("place." + id).orElse(0)))
                .toList();
        boolean apart = ordered.stream()
                        .map(id -> form.number("place." + id))
                        .distinct()
                        .count()
                == ordered.size();
        return apart ? ordered : List.of();
    }

    @POST
    @Path("skips")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response skip(MultivaluedMap<String, String> typed) {
        queries.skip(current.actor(), current.zone());
        return Html.goTo("/today");
    }

    @POST
    @Path("erasures")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response erase(MultivaluedMap<String, String> typed) {
        queries.erase(current.actor(), current.zone());
        return Html.goTo("/recall");
    }
}
