package org.benchtrail.core.method.desk;

import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Course;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Move;
import org.benchtrail.core.method.Persons;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.ServerKnowledge;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;
import org.jspecify.annotations.Nullable;

/** Ended without a fix: withdrawn, or a duplicate of another ticket. */
public record Cancelled(@FreeText String reason, @Nullable String duplicateOf) implements MoveFact {
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

    @Override
    public List<Missing> refusedTo(Actor actor, Situation s) {
        boolean duplicate = duplicateOf != null && Persons.isAssignee(s.sheet().course(), actor);
        return actor.is(Role.SUPERVISOR) || duplicate
                ? List.of()
                : Missing.rule(
                        "not-your-role",
                        "A supervisor cancels a ticket; its assignee only as a duplicate of another, whose number is given.",
                        "desk");
    }

    /** So that no chain of duplicates leads round to its beginning. */
    @Override
    public Fact completedBy(ServerKnowledge server) {
        if (duplicateOf != null) {
            server.requireOriginal(duplicateOf);
        }
        return this;
    }

    @Override
    public List<Missing> notNow(Situation s) {
        if (s.sheet().opened().ticket().equals(duplicateOf)) {
            throw new Invalid("duplicateOf", "A ticket is no duplicate of itself: give the number of the other one.");
        }
        return List.of();
    }

    @Override
    public String told(Telling reader) {
        return Told.all(reason, duplicateOf == null ? "" : "the same as ticket " + duplicateOf);
    }
}
