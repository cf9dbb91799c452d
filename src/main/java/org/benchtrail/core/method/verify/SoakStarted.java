package org.benchtrail.core.method.verify;

import java.util.List;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.text.FieldChecks;

/** The device was left to run under observation; from here the server counts. */
public record SoakStarted(@FreeText String note) implements VerifyFact {
    public SoakStarted {
        FieldChecks t = new FieldChecks();
        note = t.optional("note", note, FieldChecks.PARAGRAPH);
        t.done();
    }

    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        return SoakTime.running(s.sheet()).isPresent()
                ? Missing.rule(
                        "soak-running",
                        "It runs already: record how long it has run, or that it came back.",
                        "soak-time-passed")
                : List.of();
    }

    @Override
    public String told(Telling reader) {
        return note;
    }
}
