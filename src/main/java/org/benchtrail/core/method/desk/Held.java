package org.benchtrail.core.method.desk;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import org.benchtrail.core.method.Course;
import org.benchtrail.core.method.Move;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.text.FieldChecks;

public record Held(WaitingFor waitingFor, Instant followUp, String note) implements MoveFact {
    public Held {
        FieldChecks t = new FieldChecks();
        t.require(waitingFor != null, "waitingFor", "Say what it waits for.");
        t.require(followUp != null, "followUp", "Say when to look at it again.");
        followUp = followUp == null ? null : followUp.truncatedTo(ChronoUnit.MICROS);
        note = t.optional("note", note, FieldChecks.PARAGRAPH);
        t.done();
    }

    @Override
    public Move move() {
        return Move.HOLD;
    }

    @Override
    public Course after(Course before, Stamp stamp) {
        return before.held(new Hold(waitingFor, followUp, note));
    }
}
