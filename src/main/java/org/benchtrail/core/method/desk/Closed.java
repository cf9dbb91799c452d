package org.benchtrail.core.method.desk;

import org.benchtrail.core.method.Course;
import org.benchtrail.core.method.Move;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.Telling;

public record Closed() implements MoveFact {
    @Override
    public Move move() {
        return Move.CLOSE;
    }

    @Override
    public Course after(Course before, Stamp stamp) {
        return before.ended(Standing.CLOSED, stamp.at());
    }

    @Override
    public String told(Telling reader) {
        return "";
    }
}
