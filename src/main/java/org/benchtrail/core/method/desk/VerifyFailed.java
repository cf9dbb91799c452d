package org.benchtrail.core.method.desk;

import org.benchtrail.core.method.Course;
import org.benchtrail.core.method.Move;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.TheoryFate;
import org.benchtrail.core.text.FieldChecks;

/** A symptom persists, or a new fault appeared. */
public record VerifyFailed(String reason) implements MoveFact {
    public VerifyFailed {
        FieldChecks t = new FieldChecks();
        reason = t.required("reason", reason, FieldChecks.PARAGRAPH, "Say what persists or appeared.");
        t.done();
    }

    @Override
    public Move move() {
        return Move.FAIL;
    }

    @Override
    public Course after(Course before, Stamp stamp) {
        return before.nextRound(Step.THEORIZE, stamp);
    }

    @Override
    public TheoryFate theoryFate() {
        return TheoryFate.NOT_CURED;
    }
}
