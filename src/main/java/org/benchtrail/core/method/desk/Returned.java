package org.benchtrail.core.method.desk;

import org.benchtrail.core.method.Course;
import org.benchtrail.core.method.Move;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.text.FieldChecks;

public record Returned(String note) implements MoveFact {
    public Returned {
        FieldChecks t = new FieldChecks();
        note = t.required("note", note, FieldChecks.PARAGRAPH, "Say what came back.");
        t.done();
    }

    @Override
    public Move move() {
        return Move.RETURN;
    }

    @Override
    public Course after(Course before, Stamp stamp) {
        return before.escalated(null);
    }
}
