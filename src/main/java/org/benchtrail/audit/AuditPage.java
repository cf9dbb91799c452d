package org.benchtrail.audit;

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
import java.time.Clock;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.audit.AuditAct.AddendumClosed;
import org.benchtrail.core.audit.AuditAct.Settled;
import org.benchtrail.core.audit.AuditAct.SignalSwitched;
import org.benchtrail.core.audit.AuditAct.TalkRecorded;
import org.benchtrail.core.audit.AuditAct.TicketChosen;
import org.benchtrail.core.audit.AuditLot;
import org.benchtrail.core.audit.AuditLot.Turn;
import org.benchtrail.core.audit.AuditPlan;
import org.benchtrail.core.audit.Mark;
import org.benchtrail.core.audit.SignalKind;
import org.benchtrail.core.audit.Stratum;
import org.benchtrail.core.audit.Take;
import org.benchtrail.core.method.DefectClass;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.NeedsPermission;
import org.benchtrail.people.Permission;
import org.benchtrail.platform.Csv;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.Moments;
import org.benchtrail.platform.Option;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.platform.form.PostedForm;
import org.benchtrail.platform.form.Refusal;
import org.benchtrail.platform.paper.Paper;
import org.benchtrail.seal.PaperHead;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** Audits: all lots, a plan for one, and one lot from its plan to its conclusion. */
@Path("/audit")
@Authenticated
public class AuditPage {
    private final AuditActs acts;
    private final LotQueries queries;
    private final CurrentActor current;
    private final Clock clock;

    AuditPage(AuditActs acts, LotQueries queries, CurrentActor current, Clock clock) {
        this.acts = acts;
        this.queries = queries;
        this.current = current;
        this.clock = clock;
    }

    @CheckedTemplate(basePath = "audit")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance lots(List<LotQueries.LotLine> lots);

        static native TemplateInstance plan(PlanView v, FormValues fill, List<Invalid.Problem> problems);

        static native TemplateInstance lot(LotView v, FormValues fill, List<Invalid.Problem> problems);

        static native TemplateInstance report(LotView v, PaperHead head);

        static native TemplateInstance paper(LotView v, PaperHead head, String made);
    }

    /**
     * The plan that is being made.
     *
     * @param strata with how many of the last 31 days would have fallen into each
     * @param shown what the sample would have shown of them
     * @param gap which tickets belong to no lot if it begins then; empty where that cannot be read
     * @param doubling lots that were not accepted, so that twice as many are drawn now
     * @param asked what is read once more before it is stated; empty until somebody wants to state it
     */
    public record PlanView(
            List<StratumLine> strata,
            List<LotView.Shown> shown,
            List<Option> witnesses,
            List<Option> otherwise,
            String gap,
            List<String> doubling,
            List<String> asked) {

        /** Whether there is no ticket to go by. */
        public boolean isNothingEnded() {
            return strata.stream().allMatch(s -> s.items() == 0);
        }
    }

    /** @param of the field that says how many are taken */
    public record StratumLine(String title, String field, int items, String drawn) {}

    @GET
    @Blocking
    public Response lots() {
        return Html.ok(Templates.lots(queries.lots(current.actor(), current.zone())));
    }

    @GET
    @Path("plan")
    @Blocking
    public Response plan() {
        List<AuditLot> doubling = queries.doublingDue(current.actor());
        FormValues usual = PlanForm.usual(clock.instant(), queries.lastEnd(current.actor()), current.zone(), doubling);
        return Html.ok(planPage(usual, List.of(), doubling, List.of()));
    }

    private TemplateInstance planPage(FormValues fill, List<Invalid.Problem> problems, List<String> asked) {
        return planPage(fill, problems, queries.doublingDue(current.actor()), asked);
    }

    private TemplateInstance planPage(
            FormValues fill, List<Invalid.Problem> problems, List<AuditLot> doubling, List<String> asked) {
        LotQueries.Before before = queries.before(current.actor());
        Map<Stratum, Take> takes = takes(fill);
        List<StratumLine> strata = Arrays.stream(Stratum.values())
                .map(stratum -> line(stratum, before.items().getOrDefault(stratum, 0), takes.get(stratum)))
                .toList();
        List<LotView.Shown> shown = takes.size() == Stratum.values().length
                ? LotQueries.shown(before.items(), takes, number(fill.value("acceptance")))
                : List.of();
        return Templates.plan(
                new PlanView(
                        strata,
                        shown,
                        before.witnesses().stream().map(w -> new Option(w, w)).toList(),
                        Arrays.stream(AuditPlan.Otherwise.values())
                                .map(o -> new Option(o.name(), o.words()))
                                .toList(),
                        PlanForm.from(fill, current.zone())
                                .map(from -> queries.gap(from, current.actor(), current.zone()))
                                .orElse(""),
                        doubling.stream().map(AuditLot::id).toList(),
                        asked),
                fill,
                problems);
    }

    private static StratumLine line(Stratum stratum, int items, @Nullable Take take) {
        return new StratumLine(
                stratum.title(), "take." + stratum, items, take == null ? "?" : String.valueOf(take.of(items)));
    }

    /** What can be read of it. */
    private static Map<Stratum, Take> takes(FormValues fill) {
        Map<String, List<String>> typed = new java.util.HashMap<>();
        for (Stratum stratum : Stratum.values()) {
            typed.put("take." + stratum, List.of(fill.value("take." + stratum)));
        }
        return PlanForm.takes(new PostedForm(typed));
    }

    private static int number(String typed) {
        return typed.matches("[0-9]{1,3}") ? Integer.parseInt(typed) : 0;
    }

    /** Shows what a plan would show, or states it once it was read as it will stand. */
    @POST
    @Path("plan")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @NeedsPermission(Permission.PLAN_AUDITS)
    @Blocking
    public Response state(MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        FormValues fill = new FormValues().typed(form.typed(), List.of());
        if (form.text("act").equals("look")) {
            return Html.ok(planPage(fill, List.of(), List.of()));
        }
        return Refusal.answer(
                () -> {
                    AuditPlan plan = PlanForm.read(form, current.zone());
                    String sure = PlanForm.sure(plan);
                    if (!form.text("sure").equals(sure)) {
                        acts.check(plan, current.actor());
                        return Html.ok(
                                planPage(fill.set("sure", sure), List.of(), PlanForm.asked(plan, current.zone())));
                    }
                    acts.state(plan, current.actor());
                    return Html.goTo("/audit/" + plan.lot());
                },
                refusal -> planPage(new FormValues().typed(form, refusal), refusal.problems(), List.of()));
    }

    @GET
    @Path("{lot}")
    @Blocking
    public Response lot(@RestPath String lot) {
        return Html.ok(page(lot, new FormValues(), List.of()));
    }

    private TemplateInstance page(String lot, FormValues fill, List<Invalid.Problem> problems) {
        return Templates.lot(queries.lot(lot, current.actor(), current.zone()), fill, problems);
    }

    @GET
    @Path("{lot}/report")
    @Blocking
    public Response report(@RestPath String lot) {
        LotQueries.LotReport report = queries.report(lot, current.actor(), current.zone());
        return Html.ok(Templates.report(report.view(), report.head()));
    }

    @GET
    @Path("{lot}/report.pdf")
    @Blocking
    public Response paper(@RestPath String lot) {
        LotQueries.LotReport report = queries.report(lot, current.actor(), current.zone());
        String made = "Lot " + report.view().id() + ", made " + Moments.text(clock.instant(), current.zone());
        return Response.ok(Paper.pdf(Templates.paper(report.view(), report.head(), made)), Paper.MEDIA_TYPE)
                .header(
                        "Content-Disposition",
                        "inline; filename=\"audit-" + report.view().id() + ".pdf\"")
                .build();
    }

    /** All tickets of the lot with their ranks. */
    @GET
    @Path("{lot}/list.csv")
    @Blocking
    public Response list(@RestPath String lot) {
        return Response.ok(queries.list(lot, current.actor()), Csv.MEDIA_TYPE)
                .header("Content-Disposition", Csv.PLAIN.disposition("audit-" + lot))
                .build();
    }

    private Response afterwards(String lot, PostedForm form, Runnable act) {
        return Refusal.answer(
                () -> {
                    act.run();
                    return Html.goTo("/audit/" + lot);
                },
                refusal -> page(lot, new FormValues().typed(form, refusal), refusal.problems()));
    }

    /** Takes the next review, or gives it to another. */
    @POST
    @Path("{lot}/reviews")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @NeedsPermission(Permission.REVIEW)
    @Blocking
    public Response give(@RestPath String lot, MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        String own = current.actor().account();
        String reviewer = form.has("reviewer") ? form.text("reviewer") : own;
        return Refusal.answer(
                () -> {
                    Turn turn = acts.give(lot, reviewer, form.text("despite"), current.actor());
                    return Html.goTo(
                            reviewer.equals(own)
                                    ? "/audit/" + lot + "/reviews/" + turn.ticket() + "/" + turn.turn()
                                    : "/audit/" + lot);
                },
                refusal -> page(lot, new FormValues().typed(form, refusal), refusal.problems()));
    }

    /** Ticket and requirement that a form is about. */
    private static String[] about(PostedForm form) {
        String[] parts = form.text("of").split("/", -1);
        if (parts.length != 2) {
            throw new Invalid("of", "Say which requirement of which ticket.");
        }
        return parts;
    }

    @POST
    @Path("{lot}/settlements")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @NeedsPermission(Permission.REVIEW)
    @Blocking
    public Response settle(@RestPath String lot, MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return afterwards(
                lot,
                form,
                () -> acts.settle(
                        lot,
                        new Settled(
                                about(form)[0],
                                about(form)[1],
                                ReviewPage.chosen(Mark.class, "mark", form.text("mark")),
                                form.has("defect")
                                        ? ReviewPage.chosen(DefectClass.class, "defect", form.text("defect"))
                                        : null,
                                form.text("remark")),
                        current.actor()));
    }

    @POST
    @Path("{lot}/talks")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @NeedsPermission(Permission.REVIEW)
    @Blocking
    public Response talk(@RestPath String lot, MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return afterwards(
                lot,
                form,
                () -> acts.talk(
                        lot,
                        new TalkRecorded(
                                form.text("talk"), List.of(form.text("of").split("/", -1))),
                        current.actor()));
    }

    @POST
    @Path("{lot}/addenda")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @NeedsPermission(Permission.REVIEW)
    @Blocking
    public Response ask(@RestPath String lot, MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return afterwards(
                lot,
                form,
                () -> acts.askAddendum(lot, about(form)[0], about(form)[1], form.text("remark"), current.actor()));
    }

    /** Ends the waiting for an addendum that never came. */
    @POST
    @Path("{lot}/addenda/closings")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @NeedsPermission(Permission.PLAN_AUDITS)
    @Blocking
    public Response closeAddendum(@RestPath String lot, MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return afterwards(
                lot,
                form,
                () -> acts.closeAddendum(
                        lot,
                        new AddendumClosed(about(form)[0], about(form)[1], form.text("closing")),
                        current.actor()));
    }

    @POST
    @Path("{lot}/conclusion")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @NeedsPermission(Permission.PLAN_AUDITS)
    @Blocking
    public Response conclude(@RestPath String lot, MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return afterwards(lot, form, () -> acts.conclude(lot, form.text("decision"), current.actor()));
    }

    /** Draws the rest of a lot that was not accepted. */
    @POST
    @Path("{lot}/rest")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @NeedsPermission(Permission.PLAN_AUDITS)
    @Blocking
    public Response drawRest(@RestPath String lot, MultivaluedMap<String, String> typed) {
        return afterwards(lot, new PostedForm(typed), () -> acts.drawRest(lot, current.actor()));
    }

    /** Has one more ticket looked at, outside every estimate. */
    @POST
    @Path("{lot}/chosen")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @NeedsPermission(Permission.PLAN_AUDITS)
    @Blocking
    public Response choose(@RestPath String lot, MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return afterwards(
                lot,
                form,
                () -> acts.choose(lot, new TicketChosen(form.text("chosen"), form.text("why")), current.actor()));
    }

    /** Shows a signal no more, or again. */
    @POST
    @Path("{lot}/signals")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @NeedsPermission(Permission.PLAN_AUDITS)
    @Blocking
    public Response switchSignal(@RestPath String lot, MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        return afterwards(
                lot,
                form,
                () -> acts.switchSignal(
                        lot,
                        new SignalSwitched(
                                ReviewPage.chosen(SignalKind.class, "signal", form.text("signal")),
                                form.text("shown").equals("yes"),
                                form.text("remark")),
                        current.actor()));
    }
}
