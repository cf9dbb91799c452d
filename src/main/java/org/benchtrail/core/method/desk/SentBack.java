package org.benchtrail.core.method.desk;

import java.util.List;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Part;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.text.FieldChecks;

/** A mentor does not sign the work as it is, and says what has to be put right first. */
public record SentBack(@FreeText String reason) implements DeskFact {
    public SentBack {
        FieldChecks t = new FieldChecks();
        reason = t.required("reason", reason, FieldChecks.PARAGRAPH, "Say what has to be put right first.");
        t.done();
    }

    @Override
    public Part takesPart() {
        return Part.JUDGING;
    }

    @Override
    public List<Missing> refusedTo(Actor actor, Situation s) {
        return actor.is(Role.MENTOR)
                ? List.of()
                : Missing.rule("not-your-role", "Only a mentor sends a trainee's work back.", "mentor-signed");
    }

    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        return s.sheet().workedBy(Role.TRAINEE)
                ? List.of()
                : Missing.rule("nothing-to-sign", "No trainee has worked on this ticket.", "mentor-signed");
    }

    @Override
    public String told(Telling reader) {
        return reason;
    }
}
