package org.benchtrail.core.method.desk;

import java.util.List;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Course;
import org.benchtrail.core.method.EnumCopies;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Move;
import org.benchtrail.core.method.Persons;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.ServerKnowledge;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;

/** Taken from the queue, taken when offered, or assigned by a supervisor. */
public record HandedOver(
        String to, Set<Role> toRoles, @FreeText String note) implements MoveFact {
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

    /** Whoever works on tickets takes one that nobody has, or that is offered to them; a supervisor assigns outright. */
    @Override
    public List<Missing> refusedTo(Actor actor, Situation s) {
        Course course = s.sheet().course();
        boolean taking = to.equals(actor.account())
                && (course.assignee() == null || actor.account().equals(course.offered()));
        if (taking || actor.is(Role.SUPERVISOR)) {
            return List.of();
        }
        return Persons.isAssignee(course, actor)
                ? Missing.rule("offer-it", "A ticket changes hands when the other takes it: offer it to them.", "desk")
                : Persons.assignee(course, actor);
    }

    @Override
    public List<Missing> notNow(Situation s) {
        return Persons.taker(s.sheet(), to);
    }

    @Override
    public Fact completedBy(ServerKnowledge server) {
        Actor taker = server.worker(to);
        return new HandedOver(taker.account(), taker.roles(), note);
    }

    @Override
    public String told(Telling reader) {
        return Told.noted("to " + reader.name(to), note);
    }
}
