package org.benchtrail.proposals;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Optional;
import org.benchtrail.core.method.Actor;
import org.benchtrail.people.Duty;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;

/** What one supervisor proposed waits for another. */
@ApplicationScoped
@Transactional
class ProposalDuty implements Duty {
    private final ProposalRows rows;

    ProposalDuty(ProposalRows rows) {
        this.rows = rows;
    }

    @Override
    public Optional<Line> of(Actor actor) {
        long waiting = Permissions.allow(Permission.DECIDE_PROPOSALS, actor) ? rows.ofOthers(actor.account()) : 0;
        String words =
                waiting == 1 ? "change that another supervisor proposed" : "changes that another supervisor proposed";
        return waiting == 0
                ? Optional.empty()
                : Optional.of(new Line("Proposals", waiting, words, "/proposals", "Decide on them"));
    }
}
