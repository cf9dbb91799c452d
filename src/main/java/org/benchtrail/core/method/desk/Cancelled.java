package org.benchtrail.core.method.desk;

import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Course;
import org.benchtrail.core.method.Move;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.text.FieldChecks;
import org.jspecify.annotations.Nullable;

/** Ended without a fix: withdrawn, or a duplicate of another ticket. */
public record Cancelled(String reason, @Nullable String duplicateOf) implements MoveFact {
    public Cancelled {
        FieldChecks t = new FieldChecks();
        reason = t.required("reason", reason, FieldChecks.PARAGRAPH, "Say why it ends here.");
        duplicateOf = number(t, duplicateOf);
        t.done();
    }

    private static @Nullable String number(FieldChecks t, @Nullable String typed) {
        if (typed == null || typed.isBlank()) {
            return null;
        }
        try {
            return TicketNumber.parse(typed).toString();
        } catch (Invalid e) {
            e.problems().forEach(p -> t.require(false, "duplicateOf", p.sentence()));
            return null;
        }
    }

    @Override
    public Move move() {
        return Move.CANCEL;
    }

    @Override
    public Course after(Course before, Stamp stamp) {
        return before.ended(Standing.CANCELLED, stamp.at());
    }
}
