package org.benchtrail.core.method.desk;

import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Course;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Move;
import org.benchtrail.core.method.Persons;
import org.benchtrail.core.method.ServerKnowledge;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;

/** Offered to another account, which has it as soon as it takes it. */
public record HandOverOffered(String to, @FreeText String note) implements MoveFact {
    public HandOverOffered {
        FieldChecks t = new FieldChecks();
        to = t.required("to", to, 60, "Say who is to take it.");
        note = t.optional("note", note, FieldChecks.PARAGRAPH);
        t.done();
    }

    @Override
    public Move move() {
        return Move.OFFER;
    }

    @Override
    public Course after(Course before, Stamp stamp) {
        return before.offeredTo(to);
    }

    @Override
    public List<Missing> notNow(Situation s) {
        if (to.equals(s.sheet().course().assignee())) {
            throw new Invalid("to", "They have it already: choose somebody else.");
        }
        return Persons.taker(s.sheet(), to);
    }

    @Override
    public Fact completedBy(ServerKnowledge server) {
        return new HandOverOffered(server.worker(to).account(), note);
    }

    @Override
    public String told(Telling reader) {
        return Told.noted("to " + reader.name(to), note);
    }
}
