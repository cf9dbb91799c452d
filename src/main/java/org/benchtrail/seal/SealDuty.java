package org.benchtrail.seal;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.ZoneOffset;
import java.util.Optional;
import org.benchtrail.core.method.Actor;
import org.benchtrail.people.Duty;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;

/** What is wrong with the log waits for those who answer for the record. */
@ApplicationScoped
class SealDuty implements Duty {
    private final SealTroubles troubles;

    SealDuty(SealTroubles troubles) {
        this.troubles = troubles;
    }

    @Override
    public Optional<Line> of(Actor actor) {
        if (!Permissions.allow(Permission.SEE_ALARMS, actor)) {
            return Optional.empty();
        }
        int wrong = troubles.all(ZoneOffset.UTC).size();
        String words = wrong == 1
                ? "thing is wrong with the seal of the record"
                : "things are wrong with the seal of the record";
        return wrong == 0 ? Optional.empty() : Optional.of(new Line("Seal", wrong, words, "/seal", "See the seal"));
    }
}
