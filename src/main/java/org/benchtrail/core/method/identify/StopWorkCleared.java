package org.benchtrail.core.method.identify;

import java.util.List;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Part;
import org.benchtrail.core.method.Persons;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.text.FieldChecks;

/** A stop-work lifted: what made the place workable again, by somebody who acknowledged what there was to do. */
public record StopWorkCleared(@FreeText String how, boolean acknowledged) implements IdentifyFact {
    public StopWorkCleared {
        FieldChecks t = new FieldChecks();
        how = t.required("how", how, FieldChecks.PARAGRAPH, "Say what was done about the hazard.");
        t.require(acknowledged, "acknowledged", "Read what there is to do and tick that it was done.");
        t.done();
    }

    @Override
    public Part takesPart() {
        return Part.SECOND_LOOK;
    }

    /** Some hazards are cleared by a second person only, see {@link Hazard#needsSecondPerson}. */
    @Override
    public List<Missing> refusedTo(Actor actor, Situation s) {
        return withheldFrom(actor, s.sheet());
    }

    /** What keeps that person from clearing the hazards that stand; empty if nothing does. */
    public static List<Missing> withheldFrom(Actor actor, JobSheet sheet) {
        return sheet.hazards().stream().anyMatch(Hazard::needsSecondPerson)
                ? Persons.secondPerson(sheet, actor)
                : Persons.assigneeOrSupervisor(sheet.course(), actor);
    }

    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        return s.sheet().workStopped()
                ? List.of()
                : Missing.rule("work-not-stopped", "No hazard is waiting to be cleared.", "hazards-screened");
    }

    @Override
    public boolean possibleWhileStopped() {
        return true;
    }

    @Override
    public String told(Telling reader) {
        return how;
    }
}
