package org.benchtrail.core.method.desk;

import java.util.List;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Course;
import org.benchtrail.core.method.EnumCopies;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Move;
import org.benchtrail.core.method.Persons;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.ServerKnowledge;
import org.benchtrail.core.method.Situation;
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

    /** Whoever works on tickets takes one that nobody has. */
    @Override
    public List<Missing> refusedTo(Actor actor, Situation s) {
        Course course = s.sheet().course();
        boolean taking = course.assignee() == null && to.equals(actor.account());
        return taking ? Persons.anybody() : Persons.assigneeOrSupervisor(course, actor);
    }

    @Override
    public Fact completedBy(ServerKnowledge server) {
        Actor taker = server.worker(to);
        return new HandedOver(taker.account(), taker.roles(), note);
    }
}
