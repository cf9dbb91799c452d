package org.benchtrail.core.method.desk;

import java.util.List;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.document.Signatory;
import org.benchtrail.core.method.document.Signed;
import org.benchtrail.core.method.plan.PlanApproved;
import org.benchtrail.core.method.plan.PlanDeclined;

/** What was asked for on a ticket and not answered yet. */
public final class Asks {
    private Asks() {}

    /** An answer ends it, and so does going on without: another step for a waiver, another round for an approval. */
    public static List<StandingFact<Asked>> waiting(JobSheet sheet) {
        return sheet.course().isOpen() ? sheet.all(Asked.class, asked -> waits(sheet, asked)) : List.of();
    }

    private static boolean waits(JobSheet sheet, StandingFact<Asked> asked) {
        return switch (asked.fact().what()) {
            case APPROVAL ->
                asked.round() == sheet.round()
                        && !since(sheet, asked, PlanApproved.class)
                        && !since(sheet, asked, PlanDeclined.class);
            case WAIVER ->
                asked.round() == sheet.round()
                        && asked.during() == sheet.step()
                        && sheet.latest(
                                        Waived.class,
                                        w -> w.isAfter(asked.entry())
                                                && w.fact()
                                                        .requirement()
                                                        .equals(asked.fact().requirement()))
                                .isEmpty();
            case MENTOR ->
                sheet.latest(
                                        Signed.class,
                                        s -> s.isAfter(asked.entry())
                                                && s.fact().signatory() == Signatory.MENTOR)
                                .isEmpty()
                        && !since(sheet, asked, Remarked.class)
                        && !since(sheet, asked, SentBack.class);
        };
    }

    private static boolean since(JobSheet sheet, StandingFact<Asked> asked, Class<? extends Fact> answer) {
        return sheet.latest(answer, f -> f.isAfter(asked.entry())).isPresent();
    }
}
