package org.benchtrail.core.method.desk;

import org.benchtrail.core.method.Course;
import org.benchtrail.core.method.Move;
import org.benchtrail.core.method.Stamp;

public record Resumed() implements MoveFact {
    @Override
    public Move move() {
        return Move.RESUME;
    }

    @Override
    public Course after(Course before, Stamp stamp) {
        return before.held(null);
    }
}
