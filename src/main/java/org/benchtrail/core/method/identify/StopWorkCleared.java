package org.benchtrail.core.method.identify;

import java.util.List;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Persons;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.text.FieldChecks;

/** A stop-work lifted: what made the place workable again, by somebody who acknowledged the caution. */
public record StopWorkCleared(String how, boolean acknowledged) implements IdentifyFact {
    public StopWorkCleared {
        FieldChecks t = new FieldChecks();
        how = t.required("how", how, FieldChecks.PARAGRAPH, "Say what was done about the hazard.");
        t.require(acknowledged, "acknowledged", "Read the caution and tick that you have.");
        t.done();
    }

    @Override
    public List<Missing> refusedTo(Actor actor, Situation s) {
        return Persons.assigneeOrSupervisor(s.sheet().course(), actor);
    }

    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        return s.sheet().workStopped()
                ? List.of()
                : Missing.rule("work-not-stopped", "No hazard is waiting to be cleared.", "hazards-screened");
    }
}
