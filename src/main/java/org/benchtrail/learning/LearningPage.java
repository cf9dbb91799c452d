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
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Map;
import org.benchtrail.catalogue.ShiftLine;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Directory;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.Moments;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.platform.form.Refusal;
import org.benchtrail.proposals.ProposalView;
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
        return Html.ok(queue(after, TickedTickets.NOTHING, List.of()));
    }

    private TemplateInstance queue(@Nullable String after, TickedTickets ticked, List<Invalid.Problem> problems) {
        WaitingPart part = acts.waiting(after, LINES, current.actor());
        Map<String, String> names = people.names();
        List<WaitingLine> lines = part.tickets().stream()
                .map(t -> new WaitingLine(
                        t,
                        Moments.text(t.closed(), current.zone()),
                        names.getOrDefault(t.technician(), t.technician()),
                        ticked.tickets().contains(t.ticket())))
                .toList();
        return Templates.waiting(new WaitingTickets(lines, part.total(), part.next(), ticked.reason(), problems));
    }

    /** Tickets that were ticked to be judged, and why. */
    private record TickedTickets(List<String> tickets, String reason) {
        static final TickedTickets NOTHING = new TickedTickets(List.of(), "");

        static TickedTickets in(PostedForm form) {
            return new TickedTickets(form.all("tickets"), form.text("reason"));
        }

        List<TicketNumber> numbers() {
            return tickets.stream().map(TicketNumber::parse).toList();
        }
    }

    @POST
    @Path("accepted")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response accept(MultivaluedMap<String, String> form) {
        TickedTickets ticked = TickedTickets.in(new PostedForm(form));
        return Refusal.answer(
                () -> {
                    acts.accept(ticked.numbers(), current.actor());
                    return Html.goTo("/learning");
                },
                refusal -> queue(null, ticked, refusal.problems()));
    }

    @POST
    @Path("left-out")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response leaveOut(MultivaluedMap<String, String> form) {
        TickedTickets ticked = TickedTickets.in(new PostedForm(form));
        return Refusal.answer(
                () -> {
                    acts.leaveOut(ticked.numbers(), ticked.reason(), current.actor());
                    return Html.goTo("/learning");
                },
                refusal -> queue(null, ticked, refusal.problems()));
    }

    @GET
    @Path("cases")
    @Blocking
    public Response cases(@RestQuery @Nullable String state) {
        return Html.ok(judged(state(state), TickedTickets.NOTHING, List.of()));
    }

    private TemplateInstance judged(CaseState state, TickedTickets ticked, List<Invalid.Problem> problems) {
        List<CaseView> found = acts.judged(state, Long.MAX_VALUE, MOST_SHIFTS + 1, current.actor());
        Map<String, String> names = people.names();
        List<JudgedLine> lines = found.stream()
                .limit(MOST_SHIFTS)
                .map(c -> new JudgedLine(
                        c,
                        Moments.text(c.closed(), current.zone()),
                        name(names, c.technician()),
                        name(names, c.acceptedBy()),
                        ticked.tickets().contains(c.ticket())))
                .toList();
        return Templates.cases(new JudgedCases(
                state,
                List.of(CaseState.ACCEPTED, CaseState.WITHDRAWN, CaseState.LEFT_OUT),
                lines,
                found.size() > MOST_SHIFTS,
                ticked.reason(),
                problems));
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
    public Response withdraw(MultivaluedMap<String, String> form) {
        TickedTickets ticked = TickedTickets.in(new PostedForm(form));
        return Refusal.answer(
                () -> {
                    acts.withdraw(ticked.numbers(), ticked.reason(), current.actor());
                    return Html.goTo("/learning/cases");
                },
                refusal -> judged(CaseState.ACCEPTED, ticked, refusal.problems()));
    }

    @GET
    @Path("preview")
    @Blocking
    public Response preview() {
        return Html.ok(previewed("", List.of()));
    }

    private TemplateInstance previewed(String note, List<Invalid.Problem> problems) {
        LearningPreview preview = figures.preview(current.actor());
        List<ShiftLine> shown = preview.shifts().stream()
                .filter(s -> s.size() >= SHOWN_FROM)
                .limit(MOST_SHIFTS)
                .toList();
        int small = preview.shifts().size() - shown.size();
        boolean undo = figures.canUndo(current.actor());
        return Templates.preview(new Previewed(preview, shown, small, undo, note, problems));
    }

    @POST
    @Path("versions")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response apply(MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        String note = form.text("note");
        return Refusal.answer(
                () -> {
                    ProposalView proposal = figures.apply(
                            form.number("base").orElse(0),
                            moment(form.text("at")),
                            form.text("fingerprint"),
                            form.has("approved"),
                            note,
                            current.actor());
                    return Html.goTo("/proposals/" + proposal.id());
                },
                refusal -> previewed(note, refusal.problems()));
    }

    /** The moment that the page names; null if that is none, so that the preview counts as too old. */
    private static @Nullable Instant moment(String text) {
        try {
            return Instant.parse(text);
        } catch (DateTimeParseException e) {
            return null;
        }
    }

    @POST
    @Path("undoing")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response undo(MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return Refusal.answer(
                () -> {
                    ProposalView proposal =
                            figures.undo(form.number("base").orElse(0), form.text("note"), current.actor());
                    return Html.goTo("/proposals/" + proposal.id());
                },
                refusal -> previewed("", refusal.problems()));
    }
}
