package org.benchtrail.ticket.form;

import java.util.Optional;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.StandingFact;

/** Since when an answer still counts. */
public enum Since {
    OPENING {
        @Override
        <F extends Fact> Optional<StandingFact<F>> latest(JobSheet sheet, Class<F> kind) {
            return sheet.latest(kind);
        }
    },
    ROUND {
        @Override
        <F extends Fact> Optional<StandingFact<F>> latest(JobSheet sheet, Class<F> kind) {
            return sheet.latestOfRound(kind);
        }
    },
    /** Since the last action that was carried out, or the start of the round. */
    WORK {
        @Override
        <F extends Fact> Optional<StandingFact<F>> latest(JobSheet sheet, Class<F> kind) {
            return sheet.latest(kind).filter(n -> n.entry() > sheet.lastWork());
        }
    };

    abstract <F extends Fact> Optional<StandingFact<F>> latest(JobSheet sheet, Class<F> kind);
}
