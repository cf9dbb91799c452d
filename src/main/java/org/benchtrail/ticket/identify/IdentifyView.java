package org.benchtrail.ticket.identify;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.identify.LikenessChecked;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.ticket.KnownCauses;
import org.benchtrail.ticket.TicketLine;
import org.benchtrail.ticket.Viewing;

/**
 * What the questions of the first step need beside the evidence.
 *
 * @param said what was answered so far
 * @param symptomKnown whether a symptom was recorded since the ticket was opened, or last reopened
 * @param likenessChecked whether it was looked at what is alike
 * @param veiled whether a forecast comes before what is alike
 * @param alike tickets, the likest first
 * @param known causes that fit, the likest first
 * @param shown names all of these, to be kept with the answer that they were looked at
 */
public record IdentifyView(
        AnswerLines said,
        boolean symptomKnown,
        boolean likenessChecked,
        boolean veiled,
        List<TicketLine> alike,
        List<KnownCauses.Line> known,
        String shown) {

    /** Whether there is nothing to look at, so that nothing is asked. */
    public boolean isNothing() {
        return !veiled && alike.isEmpty() && known.isEmpty();
    }

    public static IdentifyView of(
            Viewing viewing, List<TicketLine> alike, List<KnownCauses.Line> known, boolean veiled) {
        JobSheet sheet = viewing.sheet();
        String shown = Stream.concat(
                        alike.stream().map(TicketLine::number), known.stream().map(k -> "known-cause-" + k.id()))
                .collect(Collectors.joining(" "));
        boolean symptomKnown = sheet.latest(SymptomRecorded.class)
                .filter(s -> s.isAfter(sheet.course().openedAt()))
                .isPresent();
        return new IdentifyView(
                AnswerLines.of(viewing),
                symptomKnown,
                sheet.latest(LikenessChecked.class).isPresent(),
                veiled,
                alike,
                known,
                shown);
    }
}
