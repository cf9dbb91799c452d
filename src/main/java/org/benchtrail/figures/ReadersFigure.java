package org.benchtrail.figures;

import io.quarkus.qute.RawString;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import org.benchtrail.audit.JudgedRequirements.Readers;
import org.benchtrail.core.audit.Mark;
import org.benchtrail.core.audit.ReaderAgreement;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.statistics.Interval;
import org.benchtrail.core.statistics.Kappa;
import org.benchtrail.figures.Figure.Head;
import org.benchtrail.figures.Figure.Row;
import org.benchtrail.platform.chart.Chart;
import org.benchtrail.platform.chart.Chart.Kind;
import org.benchtrail.platform.chart.Chart.Point;
import org.benchtrail.platform.chart.Chart.Series;
import org.benchtrail.platform.chart.SvgChart;

/** How far readers of audits agree, two and two. Who they are stands in the audit's own report and nowhere here. */
final class ReadersFigure {
    private static final double CONFIDENCE = 0.95;

    private ReadersFigure() {}

    static Figure of(List<Readers> readers) {
        List<Readers> drawn = readers.stream().filter(r -> kappa(r).isPresent()).toList();
        return new Figure(
                "readers",
                "How far readers of audits agree",
                "Cohen's kappa, by the first marks of two who read a ticket both, of the audits concluded for lots that ended in"
                        + " the period: 1 is full agreement, 0 what chance alone would give. Where nearly all is satisfied it"
                        + " is low by its nature, so the counts stand beside it. Who the two are stands in the audit's report.",
                drawn.isEmpty() ? null : drawn(drawn),
                few(readers, drawn),
                List.of(
                        Head.words("Audit"),
                        Head.number("Pairs of marks"),
                        Head.number("Alike"),
                        Head.number("Alike [%]"),
                        Head.number("Kappa"),
                        Head.number("Standard error"),
                        Head.words("Marks of the one, and of the other")),
                readers.stream().map(ReadersFigure::row).toList(),
                readers.stream()
                        .filter(r -> r.agreement().asksForTalk())
                        .map(r -> "Audit " + title(r) + ": the two agree little, kappa "
                                + kappa(r).map(k -> number(k.kappa().orElseThrow()))
                                        .orElse("") + ".")
                        .toList());
    }

    /** Where there is one: of enough pairs, and not all of them in one cell. */
    private static Optional<Kappa> kappa(Readers readers) {
        return readers.agreement().kappa().filter(k -> k.kappa().isPresent());
    }

    private static String few(List<Readers> readers, List<Readers> drawn) {
        if (readers.isEmpty()) {
            return "No ticket was read by two in an audit of this period that is concluded.";
        }
        return drawn.isEmpty()
                ? "No two readers have " + ReaderAgreement.LEAST + " pairs of marks that vary: too few to draw."
                : "";
    }

    private static String title(Readers readers) {
        return readers.lot() + (readers.of() == 1 ? "" : ", two readers, " + readers.place() + " of " + readers.of());
    }

    private static Row row(Readers readers) {
        ReaderAgreement two = readers.agreement();
        boolean enough = two.kappa().isPresent();
        Optional<Kappa> kappa = kappa(readers);
        return new Row(
                readers.lot() + "/" + readers.place(),
                List.of(
                        title(readers),
                        String.valueOf(two.pairs()),
                        String.valueOf(two.agreed()),
                        enough ? Figure.percent((double) two.agreed() / two.pairs()) : "",
                        enough
                                ? kappa.map(k -> number(k.kappa().orElseThrow()))
                                        .orElse("not defined")
                                : two.pairs() + " of " + ReaderAgreement.LEAST + " needed",
                        kappa.map(k -> number(k.error().orElseThrow())).orElse(""),
                        marks(two)),
                readers.apart().stream().map(TicketNumber::serial).toList());
    }

    /** The table of counts, without the cells in which there is nothing. */
    private static String marks(ReaderAgreement two) {
        List<String> cells = new ArrayList<>();
        for (Mark one : Mark.values()) {
            for (Mark other : Mark.values()) {
                long count = two.table().get(one.ordinal()).get(other.ordinal());
                if (count > 0) {
                    cells.add(
                            one == other
                                    ? count + " both " + one.words().toLowerCase(Locale.ROOT)
                                    : count + " " + one.words().toLowerCase(Locale.ROOT) + ", "
                                            + other.words().toLowerCase(Locale.ROOT));
                }
            }
        }
        return String.join("; ", cells);
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.2f", value);
    }

    private static RawString drawn(List<Readers> drawn) {
        List<Point> points = IntStream.range(0, drawn.size())
                .mapToObj(i -> {
                    Kappa kappa = kappa(drawn.get(i)).orElseThrow();
                    Interval interval = kappa.interval(CONFIDENCE).orElseThrow();
                    return new Point(i + 1, kappa.kappa().orElseThrow(), interval.lower(), interval.upper());
                })
                .toList();
        return SvgChart.draw(new Chart(
                "two readers with enough pairs, in the order of the table",
                "kappa",
                List.of(
                        new Series(
                                "as by chance alone",
                                Kind.IDEAL,
                                List.of(Point.at(0, 0), Point.at(drawn.size() + 1, 0))),
                        new Series("two readers, with a 95 % interval", Kind.DOTS, points))));
    }
}
