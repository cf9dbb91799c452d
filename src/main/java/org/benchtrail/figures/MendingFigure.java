package org.benchtrail.figures;

import java.util.List;
import java.util.Optional;
import org.benchtrail.audit.MendedPapers.Mended;
import org.benchtrail.core.audit.Mending;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.statistics.Interval;
import org.benchtrail.figures.Figure.Head;
import org.benchtrail.figures.Figure.Row;

/** How much of what audits asked to be added to papers was added. */
final class MendingFigure {
    private static final String ALL = "ALL";

    private MendingFigure() {}

    static Figure of(List<Mended> mended) {
        return new Figure(
                "mending",
                "What was mended on paper",
                "What reviewers asked to be added to the papers, in the lots that ended in the period, of all places and kinds"
                        + " of trouble. It is mended once it is written and countersigned. Only what is due counts; a defect"
                        + " stays in the count of its audit, mended or not.",
                null,
                mended.isEmpty() ? "No addendum was asked for." : "",
                List.of(
                        Head.words("Requirement"),
                        Head.number("Asked for"),
                        Head.number("Due by now"),
                        Head.number("Written in time"),
                        Head.number("Mended"),
                        Head.number("Share of what is due [%]"),
                        Head.words("95 % interval [%]")),
                mended.stream().map(MendingFigure::row).toList(),
                List.of());
    }

    private static Row row(Mended one) {
        Mending mending = one.mending();
        Optional<Interval> rate = mending.rate();
        return new Row(
                one.code().isEmpty() ? ALL : one.code(),
                List.of(
                        one.title(),
                        String.valueOf(mending.asked()),
                        String.valueOf(mending.due()),
                        String.valueOf(mending.inTime()),
                        String.valueOf(mending.mended()),
                        rate.map(r -> Figure.percent((double) mending.mended() / mending.due()))
                                .orElse(mending.due() + " of " + Mending.ENOUGH + " needed"),
                        rate.map(r -> Figure.percent(r.lower()) + " to " + Figure.percent(r.upper()))
                                .orElse("")),
                one.tickets().stream().map(TicketNumber::serial).toList());
    }
}
