package org.benchtrail.core.method.desk;

import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Part;
import org.benchtrail.core.method.Persons;
import org.benchtrail.core.method.Reference;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;

/** A second person has read an addendum and stands by it. */
public record AddendumCountersigned(int addendum, @FreeText String note) implements DeskFact {
    public AddendumCountersigned {
        FieldChecks t = new FieldChecks();
        note = t.optional("note", note, FieldChecks.PARAGRAPH);
        t.done();
    }

    @Override
    public Part takesPart() {
        return Part.JUDGING;
    }

    @Override
    public boolean possibleWhenClosed() {
        return true;
    }

    @Override
    public List<Missing> refusedTo(Actor actor, Situation s) {
        return isTrainees(s.sheet(), addendum) && !actor.is(Role.MENTOR)
                ? Missing.rule("not-your-role", "A mentor countersigns what a trainee added.", "addenda")
                : Persons.reviewer(actor, "A mentor or a supervisor countersigns an addendum.", "addenda");
    }

    /** Whether whoever wrote it was a trainee then. */
    public static boolean isTrainees(JobSheet sheet, int addendum) {
        return sheet.latest(Addendum.class, a -> a.entry() == addendum)
                .filter(a -> a.stamp().roles().contains(Role.TRAINEE))
                .isPresent();
    }

    @Override
    public List<Reference> references() {
        return List.of(new Reference(addendum, Addendum.class, "addendum"));
    }

    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        boolean done = s.sheet()
                .latest(AddendumCountersigned.class, c -> c.fact().addendum() == addendum)
                .isPresent();
        if (done) {
            throw new Invalid("addendum", "That addendum has been countersigned.");
        }
        return s.sheet().course().isOpen()
                ? Missing.rule(
                        "still-open", "This ticket was opened again: it is countersigned once it is closed.", "step")
                : List.of();
    }

    @Override
    public String told(Telling reader) {
        return Told.noted("that of entry " + addendum, note);
    }
}
