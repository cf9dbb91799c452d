package org.benchtrail.ticket;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.Step;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Directory;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.Option;
import org.benchtrail.platform.form.SignedOut;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** The queue of tickets, and the page that opens a new one. */
@Path("/")
public class QueuePage {
    private static final int LINES = 25;
    private static final int ALIKE = 3;

    private final TicketActs acts;
    private final TicketLook look;
    private final KnownCauses known;
    private final CurrentActor current;
    private final Directory people;
    private final Clock clock;

    QueuePage(
            TicketActs acts, TicketLook look, KnownCauses known, CurrentActor current, Directory people, Clock clock) {
        this.acts = acts;
        this.look = look;
        this.known = known;
        this.current = current;
        this.people = people;
        this.clock = clock;
    }

    @CheckedTemplate(basePath = "ticket")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance queue(QueueView v);

        static native TemplateInstance newTicket(
                Choices choose, Fill fill, List<Invalid.Problem> problems, List<String> places, List<String> devices);

        static native TemplateInstance alike(
                List<TicketLine> tickets, List<KnownCauses.Line> known, List<KnownCauses.Solved> solved);
    }

    /** A line of the queue in words. */
    public record Line(
            String number,
            String title,
            String device,
            String place,
            String step,
            int stepPlace,
            String assignee,
            String due,
            boolean overdue,
            String mark,
            String priority) {}

    public record QueueView(
            List<Line> lines,
            long total,
            @Nullable String nextPage,
            List<Option> steps,
            List<Option> people,
            String step,
            String who,
            String place,
            String due,
            String held,
            String text,
            String standing,
            boolean filtered) {}

    @GET
    @Authenticated
    @Blocking
    public Response home() {
        return Html.goTo("/queue");
    }

    @GET
    @Path("queue")
    @Authenticated
    @Blocking
    public Response queue(
            @RestQuery @Nullable String step,
            @RestQuery @Nullable String who,
            @RestQuery @Nullable String place,
            @RestQuery @Nullable String due,
            @RestQuery @Nullable String held,
            @RestQuery @Nullable String text,
            @RestQuery @Nullable String standing,
            @RestQuery @Nullable String after) {
        Standing wanted = Objects.requireNonNullElse(choice(Standing.class, standing), Standing.OPEN);
        String account = text(who);
        String overdue = text(due);
        String onHold = text(held);
        QueueFilter filter = new QueueFilter(
                wanted,
                choice(Step.class, step),
                account.isEmpty()
                        ? null
                        : account.equals("me") ? current.actor().account() : account,
                text(place).isEmpty() ? null : text(place),
                onHold.isEmpty() ? null : Boolean.valueOf(onHold.equals("yes")),
                overdue.isEmpty() ? null : Boolean.valueOf(overdue.equals("over")),
                text(text),
                QueueFilter.Cursor.parse(after),
                LINES);
        QueuePart part = look.queue(filter, current.actor());
        return Html.ok(
                Templates.queue(view(part, text(step), account, text(place), overdue, onHold, text(text), wanted)));
    }

    private QueueView view(
            QueuePart part,
            String step,
            String who,
            String place,
            String due,
            String held,
            String text,
            Standing standing) {
        Map<String, String> names = people.names();
        Instant now = clock.instant();
        List<Line> lines = part.tickets().stream().map(t -> line(t, names, now)).toList();
        String query = "step=" + url(step) + "&who=" + url(who) + "&place=" + url(place) + "&due=" + url(due) + "&held="
                + url(held) + "&text=" + url(text) + "&standing=" + standing;
        List<Option> persons = new ArrayList<>(List.of(new Option("me", "me"), new Option("-", "nobody yet")));
        people.workers().forEach(w -> persons.add(new Option(w.account(), w.name())));
        return new QueueView(
                lines,
                part.total(),
                part.next() == null ? null : "/queue?" + query + "&after=" + part.next(),
                Arrays.stream(Step.values())
                        .map(s -> new Option(s.name(), s.title()))
                        .toList(),
                persons,
                step,
                who,
                place,
                due,
                held,
                text,
                standing.name(),
                !(step + who + place + due + held + text).isEmpty() || standing != Standing.OPEN);
    }

    private Line line(TicketLine t, Map<String, String> names, Instant now) {
        String mark = t.holdFor() != null ? "waits for " + t.holdFor() : t.escalated() ? "escalated" : "";
        boolean open = t.standing() == Standing.OPEN;
        return new Line(
                t.number(),
                t.title(),
                t.device(),
                t.place(),
                open ? t.step().title() : Option.words(t.standing()),
                t.step().place(),
                t.assignee() == null ? "nobody yet" : names.getOrDefault(t.assignee(), t.assignee()),
                open ? Times.distance(t.due(), now) : Times.text(t.touched(), current.zone()),
                open && t.due().isBefore(now),
                mark,
                t.priority().words());
    }

    @GET
    @Path("new-ticket")
    @Authenticated
    @Blocking
    public Response blank() {
        return Html.ok(newTicket(Fill.empty(), List.of()));
    }

    /** Likely duplicates of what is being typed, known causes and tickets solved before, as a fragment. */
    @GET
    @Path("new-ticket/alike")
    @Authenticated
    @Blocking
    public Response alike(
            @RestQuery @Nullable String title,
            @RestQuery @Nullable String device,
            @RestQuery @Nullable String category) {
        String words = text(title) + " " + text(device);
        List<TicketLine> open = look.alike(words, 0, current.actor()).stream()
                .filter(t -> t.standing() == Standing.OPEN)
                .toList();
        return Html.ok(Templates.alike(
                open,
                known.like(text(title), choice(Category.class, category), List.of(), ALIKE),
                known.solved(words, ALIKE)));
    }

    @POST
    @Path("new-ticket")
    @PermitAll
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response open(MultivaluedMap<String, String> typed) {
        if (!current.signedIn()) {
            return SignedOut.resend("/new-ticket", typed);
        }
        try {
            Outcome opened = acts.open(report(typed), current.actor());
            return Html.goTo("/tickets/" + opened.number());
        } catch (Invalid e) {
            return Html.status(422, newTicket(Fill.empty().typed(typed, e.problems()), e.problems()));
        }
    }

    private static NewTicket report(MultivaluedMap<String, String> typed) {
        return new NewTicket(
                text(typed.getFirst("title")),
                text(typed.getFirst("words")),
                choice(Category.class, typed.getFirst("category")),
                text(typed.getFirst("device")),
                text(typed.getFirst("place")),
                text(typed.getFirst("requester")),
                text(typed.getFirst("contact")),
                choice(org.benchtrail.core.method.Priority.Impact.class, typed.getFirst("impact")),
                choice(org.benchtrail.core.method.Priority.Urgency.class, typed.getFirst("urgency")),
                typed.getFirst("queued") != null);
    }

    private TemplateInstance newTicket(Fill fill, List<Invalid.Problem> problems) {
        return Templates.newTicket(
                Choices.ALL,
                fill,
                problems,
                look.known("place", current.actor()),
                look.known("device", current.actor()));
    }

    private static <E extends Enum<E>> @Nullable E choice(Class<E> choices, @Nullable String name) {
        return Arrays.stream(choices.getEnumConstants())
                .filter(c -> c.name().equals(name))
                .findFirst()
                .orElse(null);
    }

    private static String text(@Nullable String typed) {
        return typed == null ? "" : typed.strip();
    }

    private static String url(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }
}
