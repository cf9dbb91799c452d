package org.benchtrail.core.method.desk;

import java.util.List;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Course;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Move;
import org.benchtrail.core.method.Persons;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.text.FieldChecks;

/** An offer taken back by who has the ticket, or declined by whom it was offered to. */
public record OfferWithdrawn(@FreeText String note) implements MoveFact {
    public OfferWithdrawn {
        FieldChecks t = new FieldChecks();
        note = t.optional("note", note, FieldChecks.PARAGRAPH);
        t.done();
    }

    @Override
    public Move move() {
        return Move.END_OFFER;
    }

    @Override
    public Course after(Course before, Stamp stamp) {
        return before.offeredTo(null);
    }

    @Override
    public List<Missing> refusedTo(Actor actor, Situation s) {
        return actor.account().equals(s.sheet().course().offered())
                ? List.of()
                : Persons.assigneeOrSupervisor(s.sheet().course(), actor);
    }

    @Override
    public List<Missing> notNow(Situation s) {
        return s.sheet().course().offered() == null
                ? Missing.rule("not-offered", "This ticket is not offered to anybody.", "desk")
                : List.of();
    }

    @Override
    public String told(Telling reader) {
        return note;
    }
}
