package org.benchtrail.training;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Optional;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.people.CurrentActor;
import org.benchtrail.people.Duty;

/** Offers a trainee the questions of the day. Nothing waits for them. */
@ApplicationScoped
class RecallDuty implements Duty {
    private final RecallQueries queries;
    private final CurrentActor current;

    RecallDuty(RecallQueries queries, CurrentActor current) {
        this.queries = queries;
        this.current = current;
    }

    @Override
    public Optional<Line> of(Actor actor) {
        long waiting = actor.is(Role.TRAINEE) ? queries.waiting(actor, current.zone()) : 0;
        return waiting == 0
                ? Optional.empty()
                : Optional.of(new Line(
                        "Questions for today",
                        waiting,
                        (waiting == 1 ? "question" : "questions")
                                + " from your own jobs, about two minutes; nothing waits for it",
                        "/recall",
                        waiting == 1 ? "Answer it, or skip it" : "Answer them, or skip them"));
    }
}
