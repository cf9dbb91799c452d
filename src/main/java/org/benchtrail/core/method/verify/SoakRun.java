package org.benchtrail.core.method.verify;

import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;

/** A run under observation after the last action, in minutes. */
public record SoakRun(
        int minutes, boolean recurred, @FreeText String note) implements VerifyFact {
    public SoakRun {
        FieldChecks t = new FieldChecks();
        t.require(minutes >= 1 && minutes <= 525_600, "minutes", "Give the run in minutes, 1 to 525600 (a year).");
        note = t.optional("note", note, FieldChecks.PARAGRAPH);
        t.done();
    }

    /** No run is longer than the time since it was started. */
    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        StandingFact<SoakStarted> start = SoakTime.running(s.sheet())
                .orElseThrow(() -> new Invalid(
                        "minutes",
                        "Record first that the run begins: it is counted from there, after the last action."));
        long passed = SoakTime.passed(start, s.now());
        long told = SoakTime.told(s.sheet(), start);
        if (told + minutes > passed) {
            throw new Invalid(
                    "minutes",
                    "The run was started " + passed + " min ago, and " + told
                            + " of them are recorded: it cannot have lasted longer.");
        }
        return List.of();
    }

    @Override
    public String told(Telling reader) {
        return Told.noted(minutes + " min, " + (recurred ? "it came back" : "it stayed away"), note);
    }
}
