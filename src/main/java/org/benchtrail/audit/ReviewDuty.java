package org.benchtrail.audit;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.benchtrail.core.method.Actor;
import org.benchtrail.people.Duty;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;

/** What of an audit waits for those who review. */
@ApplicationScoped
@Transactional
class ReviewDuty implements Duty {
    private final LotRows rows;

    ReviewDuty(LotRows rows) {
        this.rows = rows;
    }

    @Override
    public Optional<Line> of(Actor actor) {
        if (!Permissions.allow(Permission.REVIEW, actor)) {
            return Optional.empty();
        }
        LotRows.Waiting waiting = rows.waiting(actor.account());
        long count = waiting.own() + waiting.toGive() + waiting.toSettle();
        List<String> words = new ArrayList<>();
        add(words, waiting.own(), "to finish");
        add(words, waiting.toGive(), "to give");
        add(words, waiting.toSettle(), waiting.toSettle() == 1 ? "difference to settle" : "differences to settle");
        return count == 0
                ? Optional.empty()
                : Optional.of(new Line(
                        "Reviews",
                        count,
                        "in an audit: " + String.join(", ", words),
                        "/audit",
                        waiting.own() > 0 ? "Go on reviewing" : "Look at the audit"));
    }

    private static void add(List<String> words, long count, String what) {
        if (count > 0) {
            words.add(count + " " + what);
        }
    }
}
