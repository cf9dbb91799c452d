package org.benchtrail.core.method.desk;

import org.benchtrail.core.method.Course;
import org.benchtrail.core.method.Move;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.Telling;

/** Leave the step for the next one. */
public record Advanced() implements MoveFact {
    @Override
    public Move move() {
        return Move.ADVANCE;
    }

    @Override
    public Course after(Course before, Stamp stamp) {
        return before.atStep(before.step().next());
    }

    @Override
    public String told(Telling reader) {
        return "";
    }
}
