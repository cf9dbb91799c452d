package org.benchtrail.core.method.verify;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.plan.ActionSettled;
import org.benchtrail.core.text.FieldChecks;

/** A run under observation after the last action, in minutes. */
public record SoakRun(int minutes, boolean recurred, String note) implements VerifyFact {
    public SoakRun {
        FieldChecks t = new FieldChecks();
        t.require(minutes >= 1 && minutes <= 525_600, "minutes", "Give the run in minutes, 1 to 525600 (a year).");
        note = t.optional("note", note, FieldChecks.PARAGRAPH);
        t.done();
    }

    /** No fault can have stayed away for longer than the time since the last action. */
    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        Instant since = s.sheet()
                .latest(ActionSettled.class, a -> a.entry() == s.sheet().lastWork())
                .map(a -> a.stamp().at())
                .orElse(s.now());
        long told = s.sheet().all(SoakRun.class, r -> r.entry() > s.sheet().lastWork()).stream()
                .mapToLong(r -> r.fact().minutes())
                .sum();
        long passed = Duration.between(since, s.now()).toMinutes();
        if (told + minutes > passed) {
            throw new Invalid(
                    "minutes",
                    "Only " + passed + " min have passed since the last action, " + told
                            + " of them recorded: a run cannot be longer.");
        }
        return List.of();
    }
}
