package org.benchtrail.ticket.identify;

import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.identify.AttachmentAdded;
import org.benchtrail.core.method.identify.ChangesAsked;
import org.benchtrail.core.method.identify.DataAnswered;
import org.benchtrail.core.method.identify.EvidenceImpossible;
import org.benchtrail.core.method.identify.ExtractRecorded;
import org.benchtrail.core.method.identify.HazardsScreened;
import org.benchtrail.core.method.identify.LikenessChecked;
import org.benchtrail.core.method.identify.LogsReviewed;
import org.benchtrail.core.method.identify.OnsetRecorded;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.ReproductionTried;
import org.benchtrail.core.method.identify.ScopeRecorded;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.ticket.Viewing;

/** What was answered to each question of identify, in a line that can stand in place of its fields; empty while it is open. */
public record AnswerLines(
        String symptom,
        String hazards,
        String data,
        String onset,
        String changes,
        String scope,
        String reproduction,
        String evidence,
        String logs,
        String likeness) {

    static AnswerLines of(Viewing viewing) {
        JobSheet sheet = viewing.sheet();
        return new AnswerLines(
                symptoms(sheet),
                line(HazardsScreened.class, viewing),
                line(DataAnswered.class, viewing),
                line(OnsetRecorded.class, viewing),
                line(ChangesAsked.class, viewing),
                line(ScopeRecorded.class, viewing),
                line(ReproductionTried.class, viewing),
                evidence(sheet),
                line(LogsReviewed.class, viewing),
                sheet.latest(LikenessChecked.class).map(l -> "looked at").orElse(""));
    }

    private static String line(Class<? extends Fact> kind, Viewing viewing) {
        return viewing.sheet().inForce(kind).map(f -> f.fact().told(viewing)).orElse("");
    }

    private static String symptoms(JobSheet sheet) {
        return sheet.all(SymptomRecorded.class).stream()
                .filter(s -> s.isAfter(sheet.course().openedAt()))
                .map(s -> s.fact().observable())
                .collect(Collectors.joining("; "));
    }

    private static String evidence(JobSheet sheet) {
        String counted = Stream.of(
                        count(sheet, ReadingRecorded.class, "reading", "readings"),
                        count(sheet, ExtractRecorded.class, "log extract", "log extracts"),
                        count(sheet, AttachmentAdded.class, "picture or file", "pictures or files"))
                .filter(words -> !words.isEmpty())
                .collect(Collectors.joining(", "));
        return counted.isEmpty()
                ? sheet.inForce(EvidenceImpossible.class)
                        .map(e -> "none is possible: " + e.fact().reason())
                        .orElse("")
                : counted;
    }

    private static String count(JobSheet sheet, Class<? extends Fact> kind, String one, String many) {
        int found = sheet.all(kind).size();
        return found == 0 ? "" : found + " " + (found == 1 ? one : many);
    }
}
