package org.benchtrail.core.method.desk;

import org.benchtrail.core.method.Course;
import org.benchtrail.core.method.Move;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.text.FieldChecks;

public record Reopened(String reason) implements MoveFact {
    public Reopened {
        FieldChecks t = new FieldChecks();
        reason = t.required("reason", reason, FieldChecks.PARAGRAPH, "Say why it is opened again.");
        t.done();
    }

    @Override
    public Move move() {
        return Move.REOPEN;
    }

    @Override
    public Course after(Course before, Stamp stamp) {
        return before.reopened(stamp);
    }
}
