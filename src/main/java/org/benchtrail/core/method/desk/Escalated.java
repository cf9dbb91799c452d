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
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;

public record Escalated(String to, @FreeText String tried) implements MoveFact {
    public Escalated {
        FieldChecks t = new FieldChecks();
        to = t.required("to", to, FieldChecks.LINE, "Say to whom, or to which supplier.");
        tried = t.required("tried", tried, FieldChecks.PARAGRAPH, "Say what was tried.");
        t.done();
    }

    @Override
    public Move move() {
        return Move.ESCALATE;
    }

    @Override
    public Course after(Course before, Stamp stamp) {
        return before.escalated(this);
    }

    @Override
    public List<Missing> refusedTo(Actor actor, Situation s) {
        return Persons.assigneeOrSupervisor(s.sheet().course(), actor);
    }

    @Override
    public List<Missing> notNow(Situation s) {
        return s.sheet().course().escalation() == null
                ? List.of()
                : Missing.rule(
                        "already-escalated", "This ticket is escalated already: record its return first.", "desk");
    }

    @Override
    public String told(Telling reader) {
        return Told.all("to " + to, Told.labelled("tried", tried));
    }
}
