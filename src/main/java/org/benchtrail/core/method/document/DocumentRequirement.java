package org.benchtrail.core.method.document;

import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Part;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.ReviewQuestion;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.desk.SentBack;
import org.benchtrail.core.method.identify.FindingRecorded;

/** What the record has to hold before the ticket can be closed. */
public enum DocumentRequirement implements Requirement {
    CAUSE_NAMED(
            false,
            "Cause",
            "The cause, and how it is known",
            s -> s.unlessInRound(CauseNamed.class, "Name the cause and how it is known."),
            ReviewQuestion.major("Is it a cause, and do the checks show it?", CauseNamed.class, FindingRecorded.class)),
    SUMMARY_WRITTEN(
            false,
            "Summary",
            "Findings, actions and outcome, signed",
            DocumentRequirement::summary,
            ReviewQuestion.minor("Does the summary say what the entries say?", SummaryWritten.class, Signed.class)),
    KNOWLEDGE_LINKED(
            true,
            "Knowledge",
            "What the next technician gains",
            s -> s.unlessInRound(
                    KnowledgeLinked.class, "Confirm a known cause, propose a new one, or say why nothing is learned."),
            ReviewQuestion.minor("Would it help the next technician?", KnowledgeLinked.class)),
    EFFORT_RECORDED(
            true,
            "Effort",
            "Time spent and parts used",
            s -> s.unlessInRound(EffortRecorded.class, "Record the time spent and the parts used."),
            ReviewQuestion.minor("Do time and parts fit the work?", EffortRecorded.class)),
    MENTOR_SIGNED(
            false,
            "Mentor",
            "What a trainee worked on, signed by a mentor",
            DocumentRequirement::mentor,
            ReviewQuestion.major("Did the mentor look at the work before signing?", Signed.class)) {
        @Override
        public String unasked(Situation s) {
            return s.sheet().workedBy(Role.TRAINEE) ? "" : "No trainee worked on it.";
        }
    };

    private final Row row;

    DocumentRequirement(
            boolean waivable, String word, String title, Function<Situation, String> gap, ReviewQuestion review) {
        row = new Row(waivable, word, title, gap, review);
    }

    @Override
    public Step step() {
        return Step.DOCUMENT;
    }

    @Override
    public Row row() {
        return row;
    }

    private static String summary(Situation s) {
        String unwritten = s.unlessInRound(
                SummaryWritten.class, "Read the draft of findings, actions and outcome, put it right and save it.");
        if (!unwritten.isEmpty()) {
            return unwritten;
        }
        if (assigneesSignature(s.sheet()).isEmpty()) {
            return "Sign the summary.";
        }
        return isSignedByAssignee(s.sheet())
                ? ""
                : "Cause, summary, lesson or effort changed after it was signed: read it and sign it again.";
    }

    private static Optional<StandingFact<Signed>> assigneesSignature(JobSheet sheet) {
        return signature(sheet, Signatory.ASSIGNEE, 0)
                .filter(x -> x.stamp().by().equals(sheet.course().assignee()));
    }

    /** Whether the assignee has signed what the ticket leaves behind, as it stands. */
    public static boolean isSignedByAssignee(JobSheet sheet) {
        return assigneesSignature(sheet)
                .filter(x -> x.isAfter(lastChange(sheet)))
                .isPresent();
    }

    private static String mentor(Situation s) {
        if (!s.sheet().workedBy(Role.TRAINEE)) {
            return "";
        }
        Optional<StandingFact<SentBack>> back = s.sheet().latest(SentBack.class);
        int since = Stream.of(
                        lastChange(s.sheet()),
                        lastOfTrainees(s.sheet()),
                        back.map(StandingFact::entry).orElse(0))
                .reduce(0, Math::max);
        if (signature(s.sheet(), Signatory.MENTOR, since).isPresent()) {
            return "";
        }
        return "A mentor who has not worked on it has to read and sign what a trainee worked on."
                + back.map(b -> " It was sent back: " + b.fact().reason()).orElse("");
    }

    private static Optional<StandingFact<Signed>> signature(JobSheet sheet, Signatory who, int since) {
        return sheet.latest(
                Signed.class, x -> x.fact().signatory() == who && x.round() == sheet.round() && x.isAfter(since));
    }

    /** The last work of a trainee, such as a symptom that was looked for again, and their last correction; not their signature. */
    private static int lastOfTrainees(JobSheet sheet) {
        return sheet.facts().stream()
                .filter(f -> f.stamp().roles().contains(Role.TRAINEE)
                        && f.fact().takesPart() == Part.WORK
                        && !(f.fact() instanceof Signed))
                .map(StandingFact::entry)
                .reduce(0, Math::max);
    }

    /** Entry after which nothing that is signed for has changed in this round. */
    private static int lastChange(JobSheet sheet) {
        return Stream.concat(
                        sheet.ofRound(DocumentFact.class).stream()
                                .filter(f -> f.fact().signedFor())
                                .map(StandingFact::settledSince),
                        Stream.of(sheet.lastStruck(EffortRecorded.class)))
                .reduce(0, Math::max);
    }
}
