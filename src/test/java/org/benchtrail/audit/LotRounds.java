package org.benchtrail.audit;

import io.quarkus.arc.Arc;
import java.time.ZoneOffset;
import java.util.List;
import org.benchtrail.core.audit.AuditAct.Marked;
import org.benchtrail.core.audit.AuditLot.Turn;
import org.benchtrail.core.audit.Mark;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.DefectClass;
import org.benchtrail.seal.SealRounds;

/** The server's part of an audit, and a reviewer who is quick, when a test of another feature asks for them. */
public final class LotRounds {
    private LotRounds() {}

    /** Freezes and draws the lots whose period has ended half a minute ago. */
    public static void draw() {
        LotJob job = Arc.container().instance(LotJob.class).get();
        job.round();
        SealRounds.once();
        job.round();
    }

    /** Marks all that is open of a review: {@code faulty} as not satisfied, the rest as satisfied. */
    public static void markAll(String lot, Turn turn, Actor by, List<String> faulty) {
        ReviewQueries queries = Arc.container().instance(ReviewQueries.class).get();
        AuditActs acts = Arc.container().instance(AuditActs.class).get();
        ReviewView.Now open = queries.review(lot, turn, "", by, ZoneOffset.UTC).now();
        while (open != null) {
            boolean fault = faulty.contains(open.code());
            acts.mark(
                    lot,
                    new Marked(
                            turn.ticket(),
                            turn.turn(),
                            open.code(),
                            fault ? Mark.NOT_SATISFIED : Mark.SATISFIED,
                            fault ? DefectClass.MAJOR : null,
                            open.evidence().stream().map(e -> e.entry()).toList(),
                            fault
                                    ? "Nothing was looked at"
                                    : open.evidence().isEmpty() ? "The rest of the record shows it" : ""),
                    by);
            open = queries.review(lot, turn, "", by, ZoneOffset.UTC).now();
        }
    }
}
