package org.benchtrail.learning;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.RawString;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.benchtrail.catalogue.Catalogues;
import org.benchtrail.catalogue.Percent;
import org.benchtrail.core.diagnosis.Calibration;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.platform.Html;
import org.benchtrail.platform.Option;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** How well stated probabilities held, as a chart and a table. */
@Path("/learning/calibration")
@Authenticated
public class CalibrationPage {
    private final CalibrationQueries queries;
    private final Catalogues catalogues;
    private final CurrentActor current;

    CalibrationPage(CalibrationQueries queries, Catalogues catalogues, CurrentActor current) {
        this.queries = queries;
        this.catalogues = catalogues;
        this.current = current;
    }

    @CheckedTemplate(basePath = "learning")
    static final class Templates {
        private Templates() {}

        static native TemplateInstance calibration(ShownCalibration v);
    }

    /** A bin of stated probabilities in words. */
    public record BinRow(String stated, int cases, int hits, String mean, String rate, String interval) {
        static BinRow of(Calibration.Bin b) {
            String range = Math.round(100 * b.from()) + " to " + Math.round(100 * b.to()) + " %";
            return new BinRow(
                    range,
                    b.cases(),
                    b.hits(),
                    Percent.text(b.meanStated()),
                    Percent.text((double) b.hits() / b.cases()),
                    Percent.text(b.hitRate().low()) + " to "
                            + Percent.text(b.hitRate().high()));
        }
    }

    /** A score with its interval in words. */
    public record Score(String mean, String interval) {
        static Score of(double mean, Calibration.@Nullable ScoreRange range) {
            return new Score(number(mean), range == null ? "" : number(range.low()) + " to " + number(range.high()));
        }

        private static String number(double x) {
            return String.format(Locale.ROOT, "%.3f", x);
        }
    }

    /** @param chart null if there is nothing to draw */
    public record ShownCalibration(
            CalibrationView it,
            List<Option> categories,
            @Nullable RawString chart,
            List<BinRow> rows,
            @Nullable Score brier,
            @Nullable Score log,
            String overconfidence,
            String beta,
            String versions) {}

    @GET
    @Blocking
    public Response calibration(@RestQuery @Nullable String category) {
        CalibrationView view = queries.view(category == null ? "" : category, current.actor());
        Calibration.Figures f = view.figures();
        List<Option> categories = catalogues.inForce().figures().values().stream()
                .map(c -> new Option(c.category().id(), c.category().title()))
                .sorted(Comparator.comparing(Option::words))
                .toList();
        String beta = view.beta() == null ? "" : String.format(Locale.ROOT, "%.2f", view.beta());
        if (f == null) {
            return Html.ok(Templates.calibration(
                    new ShownCalibration(view, categories, null, List.of(), null, null, "", beta, "")));
        }
        return Html.ok(Templates.calibration(new ShownCalibration(
                view,
                categories,
                ReliabilityChart.draw(f),
                f.bins().stream().filter(b -> b.cases() > 0).map(BinRow::of).toList(),
                Score.of(f.brier(), f.brierRange()),
                Score.of(f.logScore(), f.logRange()),
                Percent.points(f.overconfidence()),
                beta,
                view.versions().stream().map(String::valueOf).collect(Collectors.joining(", ")))));
    }
}
