package org.benchtrail.core.method.desk;

import java.util.List;
import java.util.Set;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Persons;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;

/**
 * A forecast that was due is not made: the trainee, or a mentor or supervisor for them, says why.
 *
 * @param person account of the trainee
 */
public record ForecastSkipped(
        ForecastKind forecast, String person, @FreeText String reason) implements ForecastFact {
    public ForecastSkipped {
        FieldChecks t = new FieldChecks();
        t.require(forecast != null, "forecast", "Say which forecast is skipped.");
        person = t.required("person", person, 60, "Say whose forecast is skipped.");
        reason = t.required("reason", reason, FieldChecks.LINE, "Say why, such as: urgent.");
        t.done();
    }

    @Override
    public String forecaster(Stamp stamp) {
        return person;
    }

    @Override
    public List<Missing> refusedTo(Actor actor, Situation s) {
        return person.equals(actor.account())
                ? Persons.assignee(s.sheet().course(), actor)
                : Persons.reviewer(actor, "The trainee, a mentor or a supervisor skips a forecast.", "desk");
    }

    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        Actor trainee = person.equals(actor.account())
                ? actor
                : new Actor(person, person, s.sheet().course().assigneeRoles());
        boolean theirs = Persons.isAssignee(s.sheet().course(), trainee);
        return ForecastFact.unlessDue(
                s.sheet(), theirs ? trainee : new Actor(person, person, Set.<Role>of()), forecast);
    }

    @Override
    public String told(Telling reader) {
        return Told.noted("of " + reader.name(person), reason);
    }
}
