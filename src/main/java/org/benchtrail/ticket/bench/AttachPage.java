package org.benchtrail.ticket.bench;

import org.benchtrail.ticket.Outcome;
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
import org.benchtrail.bench.ResultView;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.Option;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** From a result of the bench to a job sheet. */
@Path("/attach/{id}")
@Authenticated
@Blocking
public class AttachPage {
    private final BenchActs acts;
    private final CurrentActor current;

    AttachPage(BenchActs acts, CurrentActor current) {
        this.acts = acts;
        this.current = current;
    }

    /**
     * What would be attached, and where it may go.
     *
     * @param chosen the place that is chosen already; empty if none
     */
    public record Attaching(
            String id,
            String title,
            String address,
            ResultView result,
            List<BenchRun.Hidden> values,
            List<Option> places,
            String chosen,
            List<String> problems) {}

    @CheckedTemplate(basePath = "ticket/bench")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance attach(Attaching a);
    }

    /** Without a place, asks for it; with one, records the result there. */
    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response attach(@RestPath String id, MultivaluedMap<String, String> typed) {
        Permissions.require(Permission.WORK_TICKETS, current.actor());
        MultivaluedMap<String, String> values = new MultivaluedHashMap<>();
        values.putAll(typed);
        String chosen = taken(values, "for");
        String other = taken(values, "other");
        boolean record = !taken(values, "record").isEmpty();
        values.keySet().removeIf(name -> name.startsWith("csrf"));
        BenchRun run = BenchRun.ofForm(id, values);
        return record ? record(run, other.isEmpty() ? chosen : other) : Html.ok(page(run, chosen, List.of()));
    }

    private Response record(BenchRun run, String place) {
        try {
            String[] parts = place.split("/", 2);
            Integer action = parts.length == 2 && parts[1].matches("\\d{1,9}") ? Integer.valueOf(parts[1]) : null;
            TicketNumber number = TicketNumber.parse(parts[0].strip());
            Outcome outcome = acts.attach(number, null, run, action, current.actor());
            return outcome.refused()
                    ? Html.status(
                            409,
                            page(
                                    run,
                                    place,
                                    outcome.missing().stream()
                                            .map(Missing::sentence)
                                            .toList()))
                    : Html.goTo("/tickets/" + number + "#evidence");
        } catch (Invalid e) {
            List<String> problems =
                    e.problems().stream().map(Invalid.Problem::sentence).toList();
            return Html.status(422, page(run, place, problems));
        }
    }

    private TemplateInstance page(BenchRun run, String chosen, List<String> problems) {
        List<Option> places = acts.places(run.checksPart(), current.actor()).stream()
                .map(p -> new Option(
                        p.value(),
                        p.ticket() + " " + p.title()
                                + (p.part() == null ? "" : ": checks the part \u201c" + p.part() + "\u201d")))
                .toList();
        return Templates.attach(new Attaching(
                run.id(), run.title(), run.address(), run.view(), run.hidden(), places, chosen, problems));
    }

    private static String taken(MultivaluedMap<String, String> values, String name) {
        @Nullable List<String> texts = values.remove(name);
        return texts == null || texts.isEmpty() ? "" : texts.get(0).strip();
    }
}
