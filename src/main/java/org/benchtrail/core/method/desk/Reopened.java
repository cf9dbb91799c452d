package org.benchtrail.core.method.desk;

import java.util.List;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Course;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Move;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.text.FieldChecks;

public record Reopened(@FreeText String reason) implements MoveFact {
    public Reopened {
        FieldChecks t = new FieldChecks();
        reason = t.required("reason", reason, FieldChecks.PARAGRAPH, "Say why it is opened again.");
        t.done();
    }

    @Override
    public Move move() {
        return Move.REOPEN;
    }

    @Override
    public Course after(Course before, Stamp stamp) {
        return before.reopened(stamp);
    }

    @Override
    public boolean possibleWhenClosed() {
        return true;
    }

    @Override
    public List<Missing> refusedTo(Actor actor, Situation s) {
        Course course = s.sheet().course();
        boolean inTime = course.closed() == null // never closed: no such move, whoever asks
                || !course.closed().plus(s.policy().reopenWindow()).isBefore(s.now());
        return actor.is(Role.SUPERVISOR) || inTime
                ? List.of()
                : Missing.rule(
                        "reopen-window-over",
                        "It was closed more than " + s.policy().reopenWindow().toDays()
                                + " days ago: a supervisor reopens it, or open a new ticket.",
                        "desk");
    }

    @Override
    public String told(Telling reader) {
        return reason;
    }
}
