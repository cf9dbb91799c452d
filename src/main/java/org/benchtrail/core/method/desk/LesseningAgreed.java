package org.benchtrail.core.method.desk;

import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Part;
import org.benchtrail.core.method.Reference;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;

/**
 * A supervisor agrees that what a correction took away is owed no longer.
 *
 * @param correction entry number of the correction, or of the answer that was given anew; the latest about the same
 */
public record LesseningAgreed(int correction, @FreeText String reason) implements DeskFact {
    public LesseningAgreed {
        FieldChecks t = new FieldChecks();
        reason = t.required("reason", reason, FieldChecks.PARAGRAPH, "Say why it may be so.");
        t.done();
    }

    @Override
    public Part takesPart() {
        return Part.JUDGING;
    }

    @Override
    public List<Missing> refusedTo(Actor actor, Situation s) {
        return actor.is(Role.SUPERVISOR)
                ? List.of()
                : Missing.rule(
                        "not-your-role", "Only a supervisor agrees that something is owed no longer.", "lessenings");
    }

    @Override
    public List<Reference> references() {
        return List.of(new Reference(correction, Fact.class, "correction"));
    }

    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        boolean waits = s.sheet().lessenings().stream().anyMatch(l -> l.by().entry() == correction);
        if (!waits) {
            throw new Invalid(
                    "correction",
                    "No correction with that number waits for agreement: it was agreed to, put back, or changed again.");
        }
        return List.of();
    }

    @Override
    public String told(Telling reader) {
        return Told.noted("to that of entry " + correction, reason);
    }
}
