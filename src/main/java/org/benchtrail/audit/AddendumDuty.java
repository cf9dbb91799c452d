package org.benchtrail.audit;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Optional;
import org.benchtrail.core.method.Actor;
import org.benchtrail.people.Duty;

/** What a reviewer asks those to add who did the work. */
@ApplicationScoped
@Transactional
class AddendumDuty implements Duty {
    private final LotRows rows;

    AddendumDuty(LotRows rows) {
        this.rows = rows;
    }

    @Override
    public Optional<Line> of(Actor actor) {
        long waiting = actor.works() ? rows.addendaWaiting(actor.account()) : 0;
        return waiting == 0
                ? Optional.empty()
                : Optional.of(new Line(
                        "Asked of you",
                        waiting,
                        waiting == 1 ? "thing to add to a closed ticket" : "things to add to closed tickets",
                        "/my-reviews",
                        "Read what is asked"));
    }
}
