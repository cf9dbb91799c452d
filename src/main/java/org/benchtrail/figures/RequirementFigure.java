package org.benchtrail.figures;

import java.util.List;
import org.benchtrail.audit.JudgedRequirements.Judged;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.statistics.Interval;
import org.benchtrail.core.statistics.Proportion;
import org.benchtrail.figures.Figure.Head;
import org.benchtrail.figures.Figure.Row;

/** What audits found of each requirement: where the whole shop can learn. */
final class RequirementFigure {
    /** So many marks make a share; common practice. */
    static final int ENOUGH = 30;

    private static final double CONFIDENCE = 0.95;

    private RequirementFigure() {}

    static Figure of(List<Judged> judged) {
        return new Figure(
                "requirements",
                "What audits found, by requirement",
                "Marks of reviewers in the audits concluded for lots that ended in the period, of all places and kinds of"
                        + " trouble. It counts what was looked at; what that says of all tickets stands in each audit's"
                        + " report.",
                null,
                judged.isEmpty() ? "No audit of this period is concluded yet." : "",
                List.of(
                        Head.words("Requirement"),
                        Head.number("Looked at"),
                        Head.number("Not satisfied"),
                        Head.number("Share [%]"),
                        Head.words("95 % interval [%]")),
                judged.stream().map(RequirementFigure::row).toList(),
                List.of());
    }

    private static Row row(Judged one) {
        int faults = one.faulty().size();
        boolean enough = one.judged() >= ENOUGH;
        return new Row(
                one.code(),
                List.of(
                        one.title(),
                        String.valueOf(one.judged()),
                        String.valueOf(faults),
                        enough
                                ? Figure.percent((double) faults / one.judged())
                                : one.judged() + " of " + ENOUGH + " needed",
                        enough ? interval(new Proportion(faults, one.judged()).wilson(CONFIDENCE)) : ""),
                one.faulty().stream().map(TicketNumber::serial).toList());
    }

    private static String interval(Interval interval) {
        return Figure.percent(interval.lower()) + " to " + Figure.percent(interval.upper());
    }
}
