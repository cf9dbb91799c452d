package org.benchtrail.figures;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Step;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.platform.Csv;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.Option;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.platform.form.PostedForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** Figures over many tickets, each with its table as a file and the tickets behind every row. */
@Path("/figures")
@Authenticated
public class FiguresPage {
    private final FigureQueries queries;
    private final CurrentActor current;

    FiguresPage(FigureQueries queries, CurrentActor current) {
        this.queries = queries;
        this.current = current;
    }

    @CheckedTemplate(basePath = "figures")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance figures(ShownFigures v, FormValues fill);

        static native TemplateInstance behind(FigureQueries.Behind v, FiguresAsked asked);
    }

    /**
     * @param report null where it was not understood what is asked for
     * @param query what is asked for, as part of an address
     */
    public record ShownFigures(FigureQueries.@Nullable Report report, String query, List<Option> steps) {}

    private static FiguresAsked asked(UriInfo address) {
        return new PostedForm(address.getQueryParameters()).read(FiguresAsked.class);
    }

    @GET
    @Blocking
    public Response figures(UriInfo address) {
        FiguresAsked asked = asked(address);
        List<Option> steps = Arrays.stream(Step.values())
                .map(s -> new Option(s.name(), s.title()))
                .toList();
        try {
            FigureQueries.Report report = queries.report(asked, current.actor(), current.zone());
            String from = report.period().from().toString();
            String until = report.period().until().toString();
            return Html.ok(Templates.figures(
                    new ShownFigures(report, asked.query(), steps), fill(asked, from, until, List.of())));
        } catch (Invalid e) {
            return Html.status(
                    422,
                    Templates.figures(
                            new ShownFigures(null, "", steps), fill(asked, asked.from(), asked.until(), e.problems())));
        }
    }

    private static FormValues fill(FiguresAsked asked, String from, String until, List<Invalid.Problem> problems) {
        return new FormValues()
                .typed(
                        Map.of(
                                "from", List.of(from),
                                "until", List.of(until),
                                "category", List.of(asked.category()),
                                "place", List.of(asked.place()),
                                "step", List.of(asked.step())),
                        problems);
    }

    /** The table of one figure. */
    @GET
    @Path("{figure}.csv")
    @Blocking
    public Response file(@RestPath String figure, UriInfo address) {
        Figure found =
                queries.report(asked(address), current.actor(), current.zone()).figure(figure);
        return Response.ok(found.csv(), Csv.MEDIA_TYPE)
                .header("Content-Disposition", "attachment; filename=\"" + found.id() + ".csv\"")
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
