package org.benchtrail.core.method.document;

import java.util.Optional;
import java.util.function.Function;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Step;

/** What the record has to hold before the ticket can be closed. */
public enum DocumentRequirement implements Requirement {
    CAUSE_NAMED(
            false,
            "The cause, and how it is known",
            s -> s.unlessInRound(CauseNamed.class, "Name the cause and how it is known.")),
    SUMMARY_WRITTEN(false, "Findings, actions and outcome, signed", DocumentRequirement::summary),
    KNOWLEDGE_LINKED(
            true,
            "What the next technician gains",
            s -> s.unlessInRound(
                    KnowledgeLinked.class, "Confirm a known cause, propose a new one, or say why nothing is learned.")),
    EFFORT_RECORDED(
            true,
            "Time spent and parts used",
            s -> s.unlessInRound(EffortRecorded.class, "Record the time spent and the parts used.")),
    MENTOR_SIGNED(false, "A trainee's ticket signed by a mentor", DocumentRequirement::mentor);

    private final Row row;

    DocumentRequirement(boolean waivable, String title, Function<Situation, String> gap) {
        row = new Row(waivable, title, gap);
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
        return signature(s.sheet(), Signatory.ASSIGNEE)
                        .filter(x -> x.stamp().by().equals(s.sheet().course().assignee()))
                        .isPresent()
                ? ""
                : "Sign the summary.";
    }

    private static String mentor(Situation s) {
        if (!s.sheet().course().isTrainees()) {
            return "";
        }
        return signature(s.sheet(), Signatory.MENTOR)
                        .filter(x -> !x.stamp().by().equals(s.sheet().course().assignee()))
                        .isPresent()
                ? ""
                : "A mentor has to read and sign this trainee's ticket.";
    }

    /** The signature of that kind under the latest summary of this round. */
    private static Optional<StandingFact<Signed>> signature(JobSheet sheet, Signatory who) {
        int written = sheet.latestOfRound(SummaryWritten.class)
                .map(StandingFact::entry)
                .orElse(Integer.MAX_VALUE);
        return sheet.latest(Signed.class, x -> x.fact().signatory() == who && x.entry() > written);
    }
}
