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
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.practice.job.Family;
import org.benchtrail.core.practice.job.Truth.Played;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.NotFound;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.platform.form.Refusal;
import org.benchtrail.platform.repeat.Repeats;
import org.benchtrail.ticket.EntryLine;
import org.benchtrail.ticket.Times;
import org.benchtrail.ticket.draft.DraftView;
import org.benchtrail.ticket.form.SheetForm;
import org.benchtrail.ticket.sheet.Notice;
import org.benchtrail.ticket.sheet.SheetForms;
import org.benchtrail.ticket.sheet.SheetQueries;
import org.benchtrail.ticket.sheet.SheetView;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** Practice jobs: the list of one's own, the job on the same sheet as a ticket, and its debrief. */
@Path("/practice")
@Authenticated
@Blocking
public class PracticePage {
    private static final String STALE = "This job went on meanwhile. What you typed is kept below: send it again.";

    /** Forms that need somebody else, or another ticket: a practice job has neither. */
    private static final Set<String> ELSEWHERE = Set.of(
            "approve",
            "correct",
            "mentor",
            "waive",
            "hand-over",
            "offer",
            "end-offer",
            "agree",
            "ask",
            "remark",
            "send-back",
            "addendum",
            "countersign",
            "hold",
            "resume",
            "escalate",
            "return",
            "cancel",
            "reopen");

    private final PracticeActs acts;
    private final PracticeQueries queries;
    private final OwnJobQueries own;
    private final OwnJobActs ownActs;
    private final CurrentActor current;
    private final Repeats repeats;
    private final TrialActs trials;

    PracticePage(
            PracticeActs acts,
            PracticeQueries queries,
            OwnJobQueries own,
            OwnJobActs ownActs,
            CurrentActor current,
            Repeats repeats,
            TrialActs trials) {
        this.acts = acts;
        this.trials = trials;
        this.queries = queries;
        this.own = own;
        this.ownActs = ownActs;
        this.current = current;
        this.repeats = repeats;
    }

    @CheckedTemplate(basePath = "training")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance practice(
                List<Family> families,
                List<OwnJobQueries.Offer> offers,
                List<Line> jobs,
                List<Invalid.Problem> problems);

        static native TemplateInstance job(
                SheetView v, FormValues fill, Notice notice, @Nullable DraftView draft, PracticeView p);

        static native TemplateInstance debrief(DebriefView d);

        static native TemplateInstance trail(int id, List<EntryLine> entries);
    }

    /** One of somebody's own jobs. */
    public record Line(int id, String title, String begun, String state, boolean open, long acts) {}

    @GET
    @Blocking
    public Response practice() {
        return Html.ok(list(List.of()));
    }

    private TemplateInstance list(List<Invalid.Problem> problems) {
        List<Line> jobs = queries.own(current.actor()).stream()
                .map(job -> new Line(
                        job.id(),
                        job.title(),
                        Times.text(job.begun(), current.zone()),
                        PracticeJob.State.valueOf(job.state()).words(),
                        job.state().equals(PracticeJob.State.OPEN.name()),
                        job.acts()))
                .toList();
        return Templates.practice(PracticeQueries.families(), own.offers(current.actor()), jobs, problems);
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response begin(MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return Refusal.answer(
                () -> repeats.once(form, () -> {
                    if (form.has("given")) {
                        int given = form.number("given").orElse(0);
                        return Html.goTo("/practice/" + ownActs.begin(given, current.actor()));
                    }
                    Family family = Stream.of(Family.values())
                            .filter(f -> f.id().equals(form.text("family")))
                            .findFirst()
                            .orElseThrow(() -> new Invalid("form", "Choose one of the devices."));
                    return Html.goTo("/practice/" + acts.begin(family, current.actor()));
                }),
                refusal -> list(refusal.problems()));
    }

    @GET
    @Path("{id}")
    @Blocking
    public Response show(@RestPath int id) {
        PracticeJob job = queries.job(id, current.actor());
        return Html.ok(job.isOpen() ? sheet(job, Map.of(), Notice.NONE) : Templates.debrief(queries.debrief(job)));
    }

    @GET
    @Path("{id}/sheet/trail")
    @Blocking
    public Response trail(@RestPath int id) {
        PracticeJob job = queries.job(id, current.actor());
        SheetQueries.Contents contents = queries.contents(job, job.played(), current.actor(), current.zone());
        return Html.ok(Templates.trail(
                id, contents.viewing().lines(contents.viewing().sheet().facts())));
    }

    @GET
    @Path("{id}/sheet/entries/{entry}")
    @Blocking
    public Response entry(@RestPath int id, @RestPath int entry) {
        queries.job(id, current.actor());
        return Html.goTo("/practice/" + id + "/sheet/trail#e" + entry);
    }

    /** A form of the job sheet. */
    @POST
    @Path("{id}/sheet/{form}")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response write(@RestPath int id, @RestPath String form, MultivaluedMap<String, String> typed) {
        Permissions.require(Permission.WORK_TICKETS, current.actor());
        SheetForm named = SheetForms.find(form)
                .filter(f -> !ELSEWHERE.contains(f.name()))
                .orElseThrow(() -> new NotFound("form '" + form + "'"));
        PostedForm posted = new PostedForm(typed);
        return answered(
                id,
                form,
                typed,
                () -> acts.write(
                        id,
                        posted.version(),
                        sheet -> named.read(posted, sheet, queries.context(sheet, current.zone())),
                        current.actor()));
    }

    /** An act on the device, or a time of waiting. */
    @POST
    @Path("{id}/act")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response act(@RestPath int id, MultivaluedMap<String, String> typed) {
        PostedForm posted = new PostedForm(typed);
        return answered(id, "act", typed, () -> acts.act(id, posted.version(), posted.text("act"), current.actor()));
    }

    @POST
    @Path("{id}/mentor")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response mentor(@RestPath int id, MultivaluedMap<String, String> typed) {
        PostedForm posted = new PostedForm(typed);
        return answered(id, "mentor", typed, () -> acts.mentor(id, posted.version(), current.actor()));
    }

    @POST
    @Path("{id}/give-up")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Blocking
    public Response giveUp(@RestPath int id, MultivaluedMap<String, String> typed) {
        acts.giveUp(id, current.actor());
        trials.ended();
        return Html.goTo("/practice/" + id);
    }

    private Response answered(
            int id, String form, MultivaluedMap<String, String> typed, Supplier<PracticeActs.Outcome> act) {
        return Refusal.answer(
                () -> repeats.once(new PostedForm(typed), () -> after(act.get(), form, typed)),
                refusal -> again(id, form, typed, refusal));
    }

    private Response after(PracticeActs.Outcome outcome, String form, MultivaluedMap<String, String> typed) {
        if (!outcome.job().isOpen()) {
            trials.ended();
        }
        if (outcome.missing().isEmpty()) {
            String at = form.equals("act") || form.equals("mentor") ? "#bench" : "#step";
            return Html.goTo("/practice/" + outcome.job().id() + at);
        }
        String words = outcome.kept() ? "Your answers are recorded. Before the step can be left:" : "Not yet. First:";
        return Refusal.unmet(List.of())
                .on(sheet(outcome.job(), outcome.kept() ? Map.of() : typed, Notice.unmet(words, outcome.missing())));
    }

    private TemplateInstance again(int id, String form, MultivaluedMap<String, String> typed, Refusal refusal) {
        PracticeJob job = queries.job(id, current.actor());
        if (!job.isOpen()) {
            return Templates.debrief(queries.debrief(job));
        }
        Notice notice = refusal.isStale() ? Notice.stale(STALE, List.of()) : Notice.invalid(refusal.problems(), "");
        return sheet(job, typed, notice);
    }

    private TemplateInstance sheet(PracticeJob job, Map<String, List<String>> typed, Notice notice) {
        Played played = job.played();
        SheetQueries.Contents contents = queries.contents(job, played, current.actor(), current.zone());
        FormValues values = SheetForms.values(contents.viewing().sheet(), contents.context());
        values.typed(typed, notice.problems());
        return Templates.job(
                SheetView.of(contents),
                values,
                notice,
                null,
                PracticeView.of(job, played, Times.text(played.clock().now(), current.zone())));
    }
}
