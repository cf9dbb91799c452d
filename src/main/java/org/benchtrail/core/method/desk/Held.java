package org.benchtrail.core.method.desk;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Course;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Move;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;

public record Held(
        WaitingFor waitingFor, Instant followUp, @FreeText String note) implements MoveFact {
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

    private static final Duration LONGEST = Duration.ofDays(3653);

    @Override
    public List<Missing> notNow(Situation s) {
        if (!followUp.isAfter(s.now())) {
            throw new Invalid("followUp", "The follow-up has to lie in the future.");
        }
        if (followUp.isAfter(s.now().plus(LONGEST))) {
            throw new Invalid("followUp", "The follow-up has to lie within ten years.");
        }
        return s.sheet().course().hold() == null
                ? List.of()
                : Missing.rule("already-on-hold", "This ticket is on hold already: resume it first.", "desk");
    }

    @Override
    public String told(Telling reader) {
        return Told.noted("until " + reader.time(followUp) + ", waiting for " + waitingFor.words(), note);
    }
}
