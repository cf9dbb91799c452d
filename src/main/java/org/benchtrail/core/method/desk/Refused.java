package org.benchtrail.core.method.desk;

import java.util.List;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.RecordPlace;
import org.benchtrail.core.method.ServerOnly;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;

/** An act that was refused, and the codes of what was missing. Its actor is whoever tried. */
@ServerOnly
public record Refused(String act, List<String> missing) implements DeskFact {
    public Refused {
        missing = missing == null ? List.of() : List.copyOf(missing);
    }

    @Override
    public List<Missing> refusedTo(Actor actor, Situation s) {
        return Missing.rule("not-an-act", "A ticket is opened once, and nobody records a refusal by hand.", "trail");
    }

    @Override
    public RecordPlace placeIn(JobSheet sheet) {
        return RecordPlace.TRAIL;
    }

    @Override
    public String told(Telling reader) {
        return Told.noted(act.replace('-', ' '), Told.list(missing, Told::requirement));
    }
}
