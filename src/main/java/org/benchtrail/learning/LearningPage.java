package org.benchtrail.learning;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.catalogue.ShiftLine;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Directory;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.Moments;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** The supervisor's pages: closed tickets to judge, what was judged, and what learning would change. */
@Path("/learning")
@Authenticated
public class LearningPage {
    private static final int LINES = 25;
    private static final int MOST_SHIFTS = 200;
    private static final double SHOWN_FROM = 0.0005;

    private final LearningActs acts;
    private final LearnedFigures figures;
    private final CurrentActor current;
    private final Directory people;

    LearningPage(LearningActs acts, LearnedFigures figures, CurrentActor current, Directory people) {
        this.acts = acts;
        this.figures = figures;
        this.current = current;
        this.people = people;
    }

    @CheckedTemplate(basePath = "learning")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance waiting(WaitingTickets v);

        static native TemplateInstance cases(JudgedCases v);

        static native TemplateInstance preview(Previewed v);
    }

    /** A waiting ticket in words. */
    public record WaitingLine(WaitingView ticket, String closed, String technician, boolean ticked) {}

    public record WaitingTickets(
            List<WaitingLine> lines,
            long total,
            @Nullable String next,
            String reason,
            List<Invalid.Problem> problems) {}

    /** A judged case in words. */
    public record JudgedLine(CaseView it, String closed, String technician, String by, boolean ticked) {}

    public record JudgedCases(
            CaseState state,
            List<CaseState> states,
            List<JudgedLine> lines,
            boolean more,
            String reason,
            List<Invalid.Problem> problems) {
        public boolean accepted() {
            return state == CaseState.ACCEPTED;
        }
    }

    /**
     * @param small how many moves are smaller than the table shows
     */
    public record Previewed(
            LearningPreview it,
            List<ShiftLine> shifts,
            int small,
            boolean undo,
            String note,
            List<Invalid.Problem> problems) {}

    @GET
    @Blocking
    public Response waiting(@RestQuery @Nullable String after) {
        return queue(200, after, Set.of(), "", List.of());
    }

    private Response queue(
            int status, @Nullable String after, Set<String> ticked, String reason, List<Invalid.Problem> problems) {
        WaitingPart part = acts.waiting(after, LINES, current.actor());
        Map<String, String> names = people.names();
        List<WaitingLine> lines = part.tickets().stream()
                .map(t -> new WaitingLine(
                        t,
                        Moments.text(t.closed(), current.zone()),
                        names.getOrDefault(t.technician(), t.technician()),
                        ticked.contains(t.ticket())))
                .toList();
        return Html.status(
                status, Templates.waiting(new WaitingTickets(lines, part.total(), part.next(), reason, problems)));
    }

    @POST
    @Path("accepted")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response accept(@RestForm @Nullable List<String> tickets, @RestForm @Nullable String reason) {
        try {
            acts.accept(numbers(tickets), current.actor());
        } catch (Invalid e) {
            return queue(422, null, set(tickets), text(reason), e.problems());
        }
        return Html.goTo("/learning");
    }

    @POST
    @Path("left-out")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response leaveOut(@RestForm @Nullable List<String> tickets, @RestForm @Nullable String reason) {
        try {
            acts.leaveOut(numbers(tickets), text(reason), current.actor());
        } catch (Invalid e) {
            return queue(422, null, set(tickets), text(reason), e.problems());
        }
        return Html.goTo("/learning");
    }

    @GET
    @Path("cases")
    @Blocking
    public Response cases(@RestQuery @Nullable String state) {
        return judged(200, state(state), Set.of(), "", List.of());
    }

    private Response judged(
            int status, CaseState state, Set<String> ticked, String reason, List<Invalid.Problem> problems) {
        List<CaseView> found = acts.judged(state, Long.MAX_VALUE, MOST_SHIFTS + 1, current.actor());
        Map<String, String> names = people.names();
        List<JudgedLine> lines = found.stream()
                .limit(MOST_SHIFTS)
                .map(c -> new JudgedLine(
                        c,
                        Moments.text(c.closed(), current.zone()),
                        name(names, c.technician()),
                        name(names, c.acceptedBy()),
                        ticked.contains(c.ticket())))
                .toList();
        return Html.status(
                status,
                Templates.cases(new JudgedCases(
                        state,
                        List.of(CaseState.ACCEPTED, CaseState.WITHDRAWN, CaseState.LEFT_OUT),
                        lines,
                        found.size() > MOST_SHIFTS,
                        reason,
                        problems)));
    }

    private static String name(Map<String, String> names, @Nullable String account) {
        return account == null ? "" : names.getOrDefault(account, account);
    }

    private static CaseState state(@Nullable String asked) {
        return java.util.Arrays.stream(CaseState.values())
                .filter(s -> s != CaseState.WAITING && s.name().equals(asked))
                .findFirst()
                .orElse(CaseState.ACCEPTED);
    }

    @POST
    @Path("withdrawn")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response withdraw(@RestForm @Nullable List<String> tickets, @RestForm @Nullable String reason) {
        try {
            acts.withdraw(numbers(tickets), text(reason), current.actor());
        } catch (Invalid e) {
            return judged(422, CaseState.ACCEPTED, set(tickets), text(reason), e.problems());
        }
        return Html.goTo("/learning/cases");
    }

    @GET
    @Path("preview")
    @Blocking
    public Response preview() {
        return previewed(200, "", List.of());
    }

    private Response previewed(int status, String note, List<Invalid.Problem> problems) {
        LearningPreview preview = figures.preview(current.actor());
        List<ShiftLine> shown = preview.shifts().stream()
                .filter(s -> s.size() >= SHOWN_FROM)
                .limit(MOST_SHIFTS)
                .toList();
        int small = preview.shifts().size() - shown.size();
        boolean undo = figures.canUndo(current.actor());
        return Html.status(status, Templates.preview(new Previewed(preview, shown, small, undo, note, problems)));
    }

    @POST
    @Path("versions")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response apply(
            @RestForm @Nullable Integer base,
            @RestForm @Nullable String at,
            @RestForm @Nullable String fingerprint,
            @RestForm @Nullable String approved,
            @RestForm @Nullable String note) {
        try {
            figures.apply(
                    base == null ? 0 : base,
                    moment(at),
                    text(fingerprint),
                    approved != null,
                    text(note),
                    current.actor());
        } catch (Invalid e) {
            return previewed(422, text(note), e.problems());
        }
        return Html.goTo("/catalogue/versions");
    }

    private static @Nullable Instant moment(@Nullable String text) {
        try {
            return text == null ? null : Instant.parse(text);
        } catch (DateTimeParseException e) {
            return null;
        }
    }

    @POST
    @Path("undoing")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response undo(@RestForm @Nullable Integer base, @RestForm @Nullable String note) {
        try {
            figures.undo(base == null ? 0 : base, text(note), current.actor());
        } catch (Invalid e) {
            return previewed(422, "", e.problems());
        }
        return Html.goTo("/catalogue/versions");
    }

    private static List<TicketNumber> numbers(@Nullable List<String> tickets) {
        return tickets == null
                ? List.of()
                : tickets.stream().map(TicketNumber::parse).toList();
    }

    private static Set<String> set(@Nullable List<String> tickets) {
        return tickets == null ? Set.of() : Set.copyOf(tickets);
    }

    private static String text(@Nullable String typed) {
        return typed == null ? "" : typed;
    }
}
