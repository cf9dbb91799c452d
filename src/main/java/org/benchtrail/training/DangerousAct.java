package org.benchtrail.training;

import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.GuardedAct;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.plan.ActionPlanned;
import org.benchtrail.core.method.test.CheckPlanned;

/**
 * An act that a mentor is present for.
 *
 * @param what is done
 * @param cautions that guard it
 */
record DangerousAct(String what, Set<Caution> cautions) {
    /**
     * Empty if that entry is no check and no action.
     *
     * @param about as in {@link GuardedAct#about}
     */
    static Optional<DangerousAct> of(JobSheet sheet, int about) {
        if (about == GuardedAct.NO_CHECK) {
            return Optional.of(new DangerousAct("A live measurement that belongs to no check", Set.of(Caution.LIVE)));
        }
        return sheet.latest(CheckPlanned.class, c -> c.entry() == about)
                .map(c -> new DangerousAct(c.fact().what(), c.fact().cautions()))
                .or(() -> sheet.latest(ActionPlanned.class, a -> a.entry() == about)
                        .map(a -> new DangerousAct(a.fact().what(), a.fact().cautions())));
    }
}
