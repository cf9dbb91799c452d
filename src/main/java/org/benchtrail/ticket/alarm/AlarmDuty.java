package org.benchtrail.ticket.alarm;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Optional;
import org.benchtrail.core.method.Actor;
import org.benchtrail.people.Duty;

/** Alarms wait for those who look into them. */
@ApplicationScoped
class AlarmDuty implements Duty {
    private final AlarmActs alarms;

    AlarmDuty(AlarmActs alarms) {
        this.alarms = alarms;
    }

    @Override
    public Optional<Line> of(Actor actor) {
        int standing = alarms.standing(actor);
        String words = standing == 1
                ? "ticket whose record does not hold together"
                : "tickets whose records do not hold together";
        return standing == 0
                ? Optional.empty()
                : Optional.of(new Line("Alarms", standing, words, "/alarms", "See the alarms"));
    }
}
