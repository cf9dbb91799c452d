package org.benchtrail.core.method.desk;

import org.benchtrail.core.method.Course;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Later;
import org.benchtrail.core.method.Move;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.TheoryFate;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;
import org.jspecify.annotations.Nullable;

/**
 * A symptom persists, or a new fault appeared.
 *
 * @param persists whether a symptom persists; false if only a new fault appeared, which says nothing of the repair. Null, as in
 *     entries from before it was asked: it persists
 */
public record VerifyFailed(
        @FreeText String reason, @Later @Nullable Boolean persists) implements MoveFact {
    public VerifyFailed {
        FieldChecks t = new FieldChecks();
        reason = t.required("reason", reason, FieldChecks.PARAGRAPH, "Say what persists or appeared.");
        t.done();
    }

    /** A symptom persists. */
    public VerifyFailed(String reason) {
        this(reason, null);
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
        return Boolean.FALSE.equals(persists) ? TheoryFate.UNTOUCHED : TheoryFate.NOT_CURED;
    }

    @Override
    public String told(Telling reader) {
        return Told.all(
                reason, theoryFate() == TheoryFate.NOT_CURED ? "a symptom persists" : "only something new appeared");
    }
}
