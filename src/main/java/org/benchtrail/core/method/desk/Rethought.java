package org.benchtrail.core.method.desk;

import org.benchtrail.core.method.Course;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Move;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.TheoryFate;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;

/** Carrying out the plan showed the theory wrong, or an action failed. */
public record Rethought(@FreeText String reason, boolean theoryWrong) implements MoveFact {
    public Rethought {
        FieldChecks t = new FieldChecks();
        reason = t.required("reason", reason, FieldChecks.PARAGRAPH, "Say what carrying out the plan has shown.");
        t.done();
    }

    @Override
    public Move move() {
        return Move.RETHINK;
    }

    @Override
    public Course after(Course before, Stamp stamp) {
        return before.nextRound(Step.THEORIZE, stamp);
    }

    /** That an action failed says nothing of the theory: its repair was not made, so it cannot have been in vain. */
    @Override
    public TheoryFate theoryFate() {
        return theoryWrong ? TheoryFate.SHOWN_WRONG : TheoryFate.UNTOUCHED;
    }

    @Override
    public String told(Telling reader) {
        return Told.all(reason, theoryWrong ? "the theory is wrong" : "the theory still stands");
    }
}
