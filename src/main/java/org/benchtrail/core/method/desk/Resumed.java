package org.benchtrail.core.method.desk;

import java.util.List;
import org.benchtrail.core.method.Course;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Move;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.Telling;

public record Resumed() implements MoveFact {
    @Override
    public Move move() {
        return Move.RESUME;
    }

    @Override
    public Course after(Course before, Stamp stamp) {
        return before.held(null);
    }

    @Override
    public List<Missing> notNow(Situation s) {
        return s.sheet().course().hold() == null
                ? Missing.rule("not-on-hold", "This ticket is not on hold.", "desk")
                : List.of();
    }

    @Override
    public String told(Telling reader) {
        return "";
    }
}
