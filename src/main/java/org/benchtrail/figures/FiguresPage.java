package org.benchtrail.figures;

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
import jakarta.ws.rs.core.UriInfo;
import java.time.Clock;
import java.time.YearMonth;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.statistics.ChartRules;
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
import org.benchtrail.platform.repeat.Repeats;
import org.benchtrail.seal.Heads;
import org.benchtrail.seal.PaperHead;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** Figures over many tickets, each with its table as a file and the tickets behind every row. */
@Path("/figures")
@Authenticated
public class FiguresPage {
    private final FigureQueries queries;
    private final ChartBaselines baselines;
    private final Repeats repeats;
    private final Heads heads;
    private final Clock clock;
    private final CurrentActor current;

    FiguresPage(
            FigureQueries queries,
            ChartBaselines baselines,
            Repeats repeats,
            Heads heads,
            Clock clock,
            CurrentActor current) {
        this.queries = queries;
        this.baselines = baselines;
        this.repeats = repeats;
        this.heads = heads;
        this.clock = clock;
        this.current = current;
    }

    @CheckedTemplate(basePath = "figures")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance figures(ShownFigures v, FormValues fill, List<Invalid.Problem> problems);

        static native TemplateInstance paper(FigureQueries.Report report, String month, PaperHead head, String made);

        static native TemplateInstance behind(FigureQueries.Behind v, FiguresAsked asked);
    }

    /**
     * @param report null where it was not understood what is asked for
     * @param query what is asked for, as part of an address
     * @param besides the same without its days
     * @param rules by which limits may be read
     * @param head of the log when they were made
     * @param made when that was
     */
    public record ShownFigures(
            FigureQueries.@Nullable Report report,
            String query,
            String besides,
            List<Option> steps,
            List<Option> rules,
            PaperHead head,
            String made) {
        public FigureQueries.Choices choices() {
            return report == null ? FigureQueries.Choices.NONE : report.choices();
        }

        /** Months that there is a file of: that of the last day, and the one before. */
        public List<YearMonth> months() {
            if (report == null) {
                return List.of();
            }
            YearMonth last = YearMonth.from(report.period().until());
            return List.of(last, last.minusMonths(1));
        }

        /** Address of the file of a month. */
        public String paper(YearMonth month) {
            return "/figures/" + month + ".pdf" + (besides.isEmpty() ? "" : "?" + besides);
        }

        /** What each choice of rules means, and costs. */
        public List<String> rulesInWords() {
            return Arrays.stream(ChartRules.values())
                    .map(r -> "By " + r.title() + ": " + r.words() + ".")
                    .toList();
        }
    }

    private static final List<Option> STEPS = Arrays.stream(Step.values())
            .map(s -> new Option(s.name(), s.title()))
            .toList();
    private static final List<Option> RULES = Arrays.stream(ChartRules.values())
            .map(r -> new Option(r.name(), r.title()))
            .toList();

    private static FiguresAsked asked(UriInfo address) {
        return new PostedForm(address.getQueryParameters()).read(FiguresAsked.class);
    }

    @GET
    @Blocking
    public Response figures(UriInfo address) {
        FiguresAsked asked = asked(address);
        return Refusal.respond(
                () -> Html.ok(page(asked, Map.of(), List.of())),
                refusal -> Html.status(
                        422,
                        Templates.figures(
                                shown(null, asked),
                                fill(asked, asked.from(), asked.until(), Map.of(), refusal.problems()),
                                List.of())));
    }

    private TemplateInstance page(FiguresAsked asked, Map<String, List<String>> typed, List<Invalid.Problem> problems) {
        FigureQueries.Report report = queries.report(asked, current.actor(), current.zone());
        FigurePeriod period = report.period();
        FormValues fill = fill(asked, period.from().toString(), period.until().toString(), typed, problems);
        if (typed.isEmpty()) {
            fill.set("last", report.over().toString())
                    .set("weeksLast", report.over().toString());
        }
        return Templates.figures(shown(report, asked), fill, problems);
    }

    private ShownFigures shown(FigureQueries.@Nullable Report report, FiguresAsked asked) {
        return new ShownFigures(
                report,
                asked.query(),
                asked.besidesDays().query(),
                STEPS,
                RULES,
                heads.onPaper(current.zone()),
                Moments.text(clock.instant(), current.zone()));
    }

    private static FormValues fill(
            FiguresAsked asked,
            String from,
            String until,
            Map<String, List<String>> typed,
            List<Invalid.Problem> problems) {
        return new FormValues()
                .put("", asked)
                .set("from", from)
                .set("until", until)
                .set("first", from)
                .set("last", until)
                .set("weeksFirst", from)
                .set("weeksLast", until)
                .set("rules", ChartRules.USUAL.name())
                .typed(typed, problems);
    }

    /** Freezes the limits of the chart of closings. */
    @POST
    @Path("baselines")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @NeedsPermission(Permission.SEE_FIGURES)
    @Blocking
    public Response freeze(MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        FiguresAsked asked = form.read(FiguresAsked.class);
        return Refusal.answer(
                () -> repeats.once(form, () -> {
                    baselines.freeze(asked, form.read(ChartBaselines.Asked.class), current.actor());
                    return Html.goTo("/figures?" + asked.query() + "#" + ClosingFigure.ID);
                }),
                refusal -> page(asked, form.typed(), refusal.problems()));
    }

    /** Freezes the limits of the chart of weeks. */
    @POST
    @Path("week-baselines")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @NeedsPermission(Permission.SEE_FIGURES)
    @Blocking
    public Response freezeWeeks(MultivaluedMap<String, String> typed) {
        PostedForm form = new PostedForm(typed);
        FiguresAsked asked = form.read(FiguresAsked.class);
        return Refusal.answer(
                () -> repeats.once(form, () -> {
                    baselines.freezeWeeks(asked, form.read(ChartBaselines.WeeksAsked.class), current.actor());
                    return Html.goTo("/figures?" + asked.query() + "#" + LateFigures.WEEKS);
                }),
                refusal -> page(asked, form.typed(), refusal.problems()));
    }

    /**
     * All figures of the tickets opened in a month, as a file to print and keep; filtered as on the page.
     *
     * @param month such as 2026-11, by the site's calendar
     */
    @GET
    @Path("{month}.pdf")
    @Blocking
    public Response paper(@RestPath String month, UriInfo address) {
        YearMonth of = Moments.month(month);
        FiguresAsked asked = asked(address).between(of.atDay(1), of.atEndOfMonth());
        FigureQueries.Report report = queries.report(asked, current.actor(), current.zone());
        String made = "Figures of " + month + ", made " + Moments.text(clock.instant(), current.zone())
                + ", times as in " + current.zone().getId();
        return Response.ok(
                        Paper.pdf(Templates.paper(report, month, heads.onPaper(current.zone()), made)),
                        Paper.MEDIA_TYPE)
                .header("Content-Disposition", "inline; filename=\"figures-" + month + ".pdf\"")
                .build();
    }

    /** The table of one figure. */
    @GET
    @Path("{figure}.csv")
    @Blocking
    public Response file(@RestPath String figure, @RestQuery("for") @DefaultValue("") String reader, UriInfo address) {
        Csv form = Csv.of(reader);
        Figure found =
                queries.report(asked(address), current.actor(), current.zone()).figure(figure);
        return Response.ok(found.csv(form), Csv.MEDIA_TYPE)
                .header("Content-Disposition", form.disposition(found.id()))
                .build();
    }

    /** The tickets behind one row of a figure. */
    @GET
    @Path("tickets")
    @Blocking
    public Response tickets(UriInfo address) {
        FiguresAsked asked = asked(address);
        PostedForm form = new PostedForm(address.getQueryParameters());
        return Html.ok(Templates.behind(
                queries.behind(asked, form.text("figure"), form.text("row"), current.actor(), current.zone()), asked));
    }
}
