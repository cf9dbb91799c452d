package org.benchtrail.ticket.identify;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.identify.AttachmentAdded;
import org.benchtrail.core.method.identify.ChangeAnswer;
import org.benchtrail.core.method.identify.ChangeKind;
import org.benchtrail.core.method.identify.ChangesAsked;
import org.benchtrail.core.method.identify.DataAnswered;
import org.benchtrail.core.method.identify.EvidenceImpossible;
import org.benchtrail.core.method.identify.ExtractRecorded;
import org.benchtrail.core.method.identify.Hazard;
import org.benchtrail.core.method.identify.HazardsScreened;
import org.benchtrail.core.method.identify.LikenessChecked;
import org.benchtrail.core.method.identify.LogsReviewed;
import org.benchtrail.core.method.identify.OnsetRecorded;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.ReproductionTried;
import org.benchtrail.core.method.identify.ScopeRecorded;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.platform.Option;

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

    static AnswerLines of(JobSheet sheet) {
        return new AnswerLines(
                symptoms(sheet),
                line(sheet.inForce(HazardsScreened.class), AnswerLines::hazards),
                line(sheet.inForce(DataAnswered.class), d -> with(d.state().words(), d.note())),
                line(sheet.inForce(OnsetRecorded.class), o -> o.known() ? o.when() : with("nobody knows", o.when())),
                line(sheet.inForce(ChangesAsked.class), AnswerLines::changes),
                line(sheet.inForce(ScopeRecorded.class), s -> with(s.scope().words(), s.note())),
                line(sheet.inForce(ReproductionTried.class), r -> with(Option.words(r.outcome()), r.how())),
                evidence(sheet),
                line(sheet.inForce(LogsReviewed.class), l -> with(l.looked() ? "read" : "not read", l.note())),
                line(sheet.latest(LikenessChecked.class), l -> "looked at"));
    }

    private static <F extends Fact> String line(Optional<StandingFact<F>> fact, Function<F, String> words) {
        return fact.map(f -> words.apply(f.fact())).orElse("");
    }

    private static String with(String answer, String note) {
        return note.isEmpty() ? answer : answer + ": " + note;
    }

    private static String symptoms(JobSheet sheet) {
        return sheet.all(SymptomRecorded.class).stream()
                .filter(s -> s.isAfter(sheet.course().openedAt()))
                .map(s -> s.fact().observable())
                .collect(Collectors.joining("; "));
    }

    private static String hazards(HazardsScreened screened) {
        List<String> found = Stream.of(Hazard.values())
                .filter(h -> Boolean.TRUE.equals(screened.present().get(h)))
                .map(Hazard::words)
                .toList();
        return found.isEmpty() ? "none found" : "found: " + String.join(", ", found);
    }

    private static String changes(ChangesAsked asked) {
        String changed = those(asked, ChangeAnswer.YES);
        String unknown = those(asked, ChangeAnswer.UNKNOWN);
        String words = changed.isEmpty() ? "nothing known to have changed" : "changed: " + changed;
        return with(unknown.isEmpty() ? words : words + "; unknown: " + unknown, asked.note());
    }

    private static String those(ChangesAsked asked, ChangeAnswer answer) {
        return Stream.of(ChangeKind.values())
                .filter(kind -> asked.answers().get(kind) == answer)
                .map(ChangeKind::words)
                .collect(Collectors.joining(", "));
    }

    private static String evidence(JobSheet sheet) {
        String counted = Stream.of(
                        count(sheet, ReadingRecorded.class, "reading", "readings"),
                        count(sheet, ExtractRecorded.class, "log extract", "log extracts"),
                        count(sheet, AttachmentAdded.class, "picture or file", "pictures or files"))
                .filter(words -> !words.isEmpty())
                .collect(Collectors.joining(", "));
        return counted.isEmpty()
                ? line(sheet.inForce(EvidenceImpossible.class), e -> "none is possible: " + e.reason())
                : counted;
    }

    private static String count(JobSheet sheet, Class<? extends Fact> kind, String one, String many) {
        int found = sheet.all(kind).size();
        return found == 0 ? "" : found + " " + (found == 1 ? one : many);
    }
}
