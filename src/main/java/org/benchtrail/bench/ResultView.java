package org.benchtrail.bench;

import io.quarkus.qute.RawString;
import java.util.ArrayList;
import java.util.List;
import org.benchtrail.core.bench.Numeral;
import org.benchtrail.core.bench.Result;
import org.benchtrail.core.bench.Result.Curve;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.Result.Working;
import org.benchtrail.core.measure.Provenance;
import org.benchtrail.core.method.Caution;
import org.benchtrail.platform.chart.SvgChart;

/**
 * A result in ready text.
 *
 * @param level the verdict's level in small letters, for the stylesheet
 * @param shape the sign that goes with the level; empty where there is no verdict
 * @param sources where the rules come from, each once; the rules name them by place
 */
public record ResultView(
        String level,
        String shape,
        String words,
        String reason,
        List<FigureLine> figures,
        List<RuleLine> rules,
        List<CautionLine> cautions,
        List<Chart> charts,
        List<Working> working,
        List<String> assumptions,
        List<String> sources) {

    private static final int TABLE_DIGITS = 5;

    public record FigureLine(String name, String value, String unit) {}

    /** @param source the place of its source in the list of sources, from 1 on */
    public record RuleLine(String level, String shape, String outcome, String name, String sentence, int source) {}

    public record CautionLine(String title, String text) {}

    public record Chart(RawString picture, List<Table> tables) {}

    public record Table(String title, String x, String y, List<Row> rows) {}

    public record Row(String x, String y) {}

    static ResultView of(Result result) {
        List<String> sources =
                result.rules().stream().map(ResultView::source).distinct().toList();
        return new ResultView(
                level(result.judgement().level()),
                shape(result.judgement().level()),
                result.judgement().words(),
                result.judgement().reason(),
                result.figures().stream().map(ResultView::figure).toList(),
                result.rules().stream().map(r -> rule(r, sources)).toList(),
                result.cautions().stream().map(ResultView::caution).toList(),
                charts(result.curves()),
                result.working(),
                result.assumptions(),
                sources);
    }

    private static FigureLine figure(Result.Figure figure) {
        return new FigureLine(figure.name(), figure.text(), unit(figure.unit()));
    }

    private static RuleLine rule(Result.Rule rule, List<String> sources) {
        return new RuleLine(
                level(rule.outcome()),
                shape(rule.outcome()),
                outcome(rule.outcome()),
                heading(rule.name()),
                rule.sentence(),
                sources.indexOf(source(rule)) + 1);
    }

    /** The title, and what has to be known of how well it was read. */
    private static String source(Result.Rule rule) {
        return rule.provenance() == Provenance.FROM_MEMORY
                ? rule.source() + ", " + rule.provenance().words()
                : rule.source();
    }

    private static CautionLine caution(String code) {
        Caution caution = Caution.valueOf(code);
        return new CautionLine(caution.title(), caution.text());
    }

    private static List<Chart> charts(List<Curve> curves) {
        List<Chart> charts = new ArrayList<>();
        for (List<Curve> alike : CurveCharts.grouped(curves)) {
            charts.add(new Chart(
                    SvgChart.draw(CurveCharts.chart(alike)),
                    alike.stream().map(ResultView::table).toList()));
        }
        return charts;
    }

    private static Table table(Curve curve) {
        return new Table(
                curve.title(),
                CurveCharts.axisLabel(curve.xLabel(), curve.xUnit()),
                CurveCharts.axisLabel(curve.yLabel(), curve.yUnit()),
                curve.points().stream()
                        .map(p -> new Row(Numeral.of(p.x(), TABLE_DIGITS), Numeral.of(p.y(), TABLE_DIGITS)))
                        .toList());
    }

    private static String unit(String unit) {
        return unit.equals("1") ? "" : unit;
    }

    private static String level(Level level) {
        return switch (level) {
            case GOOD -> "good";
            case CAREFUL -> "careful";
            case BAD -> "bad";
            case UNDECIDED -> "undecided";
            case NONE -> "none";
        };
    }

    private static String shape(Level level) {
        return switch (level) {
            case GOOD -> "●";
            case CAREFUL -> "◐";
            case BAD -> "▲";
            case UNDECIDED -> "◌";
            case NONE -> "";
        };
    }

    private static String outcome(Level level) {
        return switch (level) {
            case GOOD -> "met";
            case CAREFUL -> "with a warning";
            case BAD -> "not met";
            case UNDECIDED -> "undecided";
            case NONE -> "for information";
        };
    }

    /** A rule's name as the beginning of a line; names stand small where a sentence quotes them. */
    private static String heading(String name) {
        return Character.toUpperCase(name.charAt(0)) + name.substring(1);
    }
}
