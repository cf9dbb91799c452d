package org.benchtrail.learning;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.Optional;
import org.benchtrail.core.method.Actor;
import org.benchtrail.people.Duty;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;

/** Closed tickets wait to be judged as cases to learn from. */
@ApplicationScoped
@Transactional
class CaseDuty implements Duty {
    private final LearningCases cases;

    CaseDuty(LearningCases cases) {
        this.cases = cases;
    }

    @Override
    public Optional<Line> of(Actor actor) {
        long waiting = Permissions.allow(Permission.KEEP_CATALOGUE, actor) ? cases.count(CaseState.WAITING) : 0;
        String words = waiting == 1 ? "closed ticket to judge" : "closed tickets to judge";
        return waiting == 0
                ? Optional.empty()
                : Optional.of(new Line("Cases to learn from", waiting, words, "/learning", "Judge them"));
    }
}
