package org.benchtrail.core.method.desk;

import org.benchtrail.core.method.Course;
import org.benchtrail.core.method.Move;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.TheoryFate;

/** The active theory is ruled out; a new round starts at theorize. */
public record RuledOut() implements MoveFact {
    @Override
    public Move move() {
        return Move.REFUTE;
    }

    @Override
    public Course after(Course before, Stamp stamp) {
        return before.nextRound(Step.THEORIZE, stamp);
    }

    @Override
    public TheoryFate theoryFate() {
        return TheoryFate.RULED_OUT;
    }

    @Override
    public String told(Telling reader) {
        return "";
    }
}
