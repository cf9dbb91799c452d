package org.benchtrail.ticket.bench;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.benchtrail.bench.BenchRun;
import org.benchtrail.core.Invalid.Problem;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.platform.form.Refusal;
import org.benchtrail.platform.repeat.Repeats;
import org.benchtrail.ticket.Outcome;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** From a result of the bench to a job sheet. */
@Path("/attach/{id}")
@Authenticated
@Blocking
public class AttachPage {
    private final BenchActs acts;
    private final BenchQueries queries;
    private final CurrentActor current;
    private final Repeats repeats;

    AttachPage(BenchActs acts, BenchQueries queries, CurrentActor current, Repeats repeats) {
        this.repeats = repeats;
        this.acts = acts;
        this.queries = queries;
        this.current = current;
    }

    @CheckedTemplate(basePath = "ticket/bench")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance attach(AttachView a);
    }

    /** Without a place, asks for it; with one, records the result there. */
    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response attach(@RestPath String id, MultivaluedMap<String, String> typed) {
        Permissions.require(Permission.WORK_TICKETS, current.actor());
        MultivaluedMap<String, String> values = new MultivaluedHashMap<>();
        values.putAll(typed);
        PostedForm form = new PostedForm(typed);
        String chosen = taken(values, "for");
        String other = taken(values, "other");
        boolean record = !taken(values, "record").isEmpty();
        values.keySet().removeIf(name -> name.startsWith("csrf"));
        BenchRun run = BenchRun.ofForm(id, values);
        String place = other.isEmpty() ? chosen : other;
        return record
                ? Refusal.answer(
                        () -> repeats.once(form, () -> record(run, place)),
                        refusal -> page(run, place, refusal.problems()))
                : Html.ok(page(run, chosen, List.of()));
    }

    private Response record(BenchRun run, String place) {
        String[] parts = place.split("/", 2);
        Integer action = parts.length == 2 && parts[1].matches("\\d{1,9}") ? Integer.valueOf(parts[1]) : null;
        TicketNumber number = TicketNumber.parse(parts[0].strip());
        Outcome outcome = acts.attach(number, null, run, action, current.actor());
        if (!outcome.refused()) {
            return Html.goTo("/tickets/" + number + "#evidence");
        }
        Refusal refusal = Refusal.unmet(outcome.missing().stream()
                .map(m -> new Problem("for", m.sentence()))
                .toList());
        return refusal.on(page(run, place, refusal.problems()));
    }

    private TemplateInstance page(BenchRun run, String chosen, List<Problem> problems) {
        List<BenchQueries.Place> places = queries.places(run.checksPart(), current.actor());
        List<String> sentences = problems.stream().map(Problem::sentence).toList();
        return Templates.attach(AttachView.of(run, places, chosen, sentences));
    }

    private static String taken(MultivaluedMap<String, String> values, String name) {
        @Nullable List<String> texts = values.remove(name);
        return texts == null || texts.isEmpty() ? "" : texts.get(0).strip();
    }
}
