package org.benchtrail.core.method;

import java.util.Optional;
import org.benchtrail.core.method.document.CauseNamed;
import org.benchtrail.core.method.document.EffortRecorded;
import org.benchtrail.core.method.document.KnowledgeLinked;
import org.benchtrail.core.method.document.Signatory;
import org.benchtrail.core.method.document.Signed;
import org.benchtrail.core.method.document.SummaryWritten;

/** What the record lacks before the ticket can be closed. */
final class DocumentGaps {
    private DocumentGaps() {}

    static String cause(Situation s) {
        return unless(s, CauseNamed.class, "Name the cause and how it is known.");
    }

    static String summary(Situation s) {
        String unwritten = unless(
                s, SummaryWritten.class, "Read the draft of findings, actions and outcome, put it right and save it.");
        if (!unwritten.isEmpty()) {
            return unwritten;
        }
        return signature(s.sheet(), Signatory.ASSIGNEE)
                        .filter(x -> x.stamp().by().equals(s.sheet().course().assignee()))
                        .isPresent()
                ? ""
                : "Sign the summary.";
    }

    static String knowledge(Situation s) {
        return unless(
                s, KnowledgeLinked.class, "Confirm a known cause, propose a new one, or say why nothing is learned.");
    }

    static String effort(Situation s) {
        return unless(s, EffortRecorded.class, "Record the time spent and the parts used.");
    }

    static String mentor(Situation s) {
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

    private static String unless(Situation s, Class<? extends Fact> kind, String sentence) {
        return s.sheet().latestOfRound(kind).isPresent() ? "" : sentence;
    }
}
