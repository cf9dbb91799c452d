package org.benchtrail.core.method.desk;

import java.util.Set;
import org.benchtrail.core.method.Course;
import org.benchtrail.core.method.EnumCopies;
import org.benchtrail.core.method.Move;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.text.FieldChecks;

/** Given to another account, or taken from the queue. */
public record HandedOver(String to, Set<Role> toRoles, String note) implements MoveFact {
    public HandedOver {
        FieldChecks t = new FieldChecks();
        to = t.required("to", to, 60, "Say who takes it.");
        toRoles = EnumCopies.set(Role.class, toRoles);
        note = t.optional("note", note, FieldChecks.PARAGRAPH);
        t.done();
    }

    @Override
    public Move move() {
        return Move.HAND_OVER;
    }

    @Override
    public Course after(Course before, Stamp stamp) {
        return before.inHandsOf(to, toRoles);
    }
}
