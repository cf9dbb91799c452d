package org.benchtrail.core.method.desk;

import java.util.List;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Course;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Move;
import org.benchtrail.core.method.Persons;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.text.FieldChecks;

public record Returned(@FreeText String note) implements MoveFact {
    public Returned {
        FieldChecks t = new FieldChecks();
        note = t.required("note", note, FieldChecks.PARAGRAPH, "Say what came back.");
        t.done();
    }

    @Override
    public Move move() {
        return Move.RETURN;
    }

    @Override
    public Course after(Course before, Stamp stamp) {
        return before.escalated(null);
    }

    @Override
    public List<Missing> refusedTo(Actor actor, Situation s) {
        return Persons.assigneeOrSupervisor(s.sheet().course(), actor);
    }

    @Override
    public List<Missing> notNow(Situation s) {
        return s.sheet().course().escalation() == null
                ? Missing.rule("not-escalated", "This ticket is not escalated.", "desk")
                : List.of();
    }

    @Override
    public String told(Telling reader) {
        return note;
    }
}
