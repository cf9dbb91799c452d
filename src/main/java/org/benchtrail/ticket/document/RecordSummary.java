package org.benchtrail.ticket.document;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.document.CauseNamed;
import org.benchtrail.core.method.document.EffortRecorded;
import org.benchtrail.core.method.document.KnowledgeLinked;
import org.benchtrail.core.method.document.Signed;
import org.benchtrail.core.method.document.SummaryWritten;
import org.benchtrail.platform.Option;
import org.benchtrail.ticket.Viewing;
import org.jspecify.annotations.Nullable;

/**
 * What a closed ticket opens with: what was found, what was done, how it ended.
 *
 * @param cause with how it is known
 * @param forNextTime what others can learn from it
 * @param effort time spent and parts used
 * @param signatures who signed, and when
 */
public record RecordSummary(
        String cause,
        String findings,
        String actions,
        String outcome,
        String forNextTime,
        String effort,
        List<String> signatures) {

    /** Null unless the ticket is closed. */
    public static @Nullable RecordSummary of(Viewing viewing) {
        JobSheet sheet = viewing.sheet();
        if (sheet.course().standing() != Standing.CLOSED) {
            return null;
        }
        Optional<SummaryWritten> summary =
                sheet.latestOfRound(SummaryWritten.class).map(s -> s.fact());
        return new RecordSummary(
                line(sheet, CauseNamed.class, c -> c.cause() + ", " + Option.words(c.sureness())),
                summary.map(SummaryWritten::findings).orElse(""),
                summary.map(SummaryWritten::actions).orElse(""),
                summary.map(SummaryWritten::outcome).orElse(""),
                line(sheet, KnowledgeLinked.class, k -> Option.words(k.learned()) + after(k.text())),
                line(sheet, EffortRecorded.class, e -> e.minutes() + " min" + after(e.parts())),
                sheet.ofRound(Signed.class).stream()
                        .map(s -> Option.words(s.fact().signatory()) + ": " + viewing.stamp(s))
                        .toList());
    }

    private static <F extends Fact> String line(JobSheet sheet, Class<F> kind, Function<F, String> words) {
        return sheet.latestOfRound(kind).map(f -> words.apply(f.fact())).orElse("");
    }

    private static String after(String note) {
        return note.isEmpty() ? "" : "; " + note;
    }
}
