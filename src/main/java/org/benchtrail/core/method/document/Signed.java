package org.benchtrail.core.method.document;

import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Part;
import org.benchtrail.core.method.Persons;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;

/** A signature under the latest summary; who signed stands in the entry's stamp. */
public record Signed(Signatory signatory) implements DocumentFact {
    public Signed {
        FieldChecks t = new FieldChecks();
        t.require(signatory != null, "signatory", "Say whether the assignee or the mentor signs.");
        t.done();
    }

    @Override
    public List<Missing> refusedTo(Actor actor, Situation s) {
        return switch (signatory) {
            case ASSIGNEE -> Persons.assignee(s.sheet().course(), actor);
            case MENTOR ->
                actor.is(Role.MENTOR)
                        ? List.of()
                        : Missing.rule(
                                "not-your-role", "Only a mentor signs what a trainee has worked on.", "mentor-signed");
        };
    }

    @Override
    public Part takesPart() {
        return signatory == Signatory.MENTOR ? Part.JUDGING : Part.WORK;
    }

    @Override
    public boolean signedFor() {
        return false;
    }

    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        if (s.sheet().latestOfRound(SummaryWritten.class).isEmpty()) {
            throw new Invalid("summary", "Write the summary before it is signed.");
        }
        return List.of();
    }

    @Override
    public String told(Telling reader) {
        return "as " + Told.plain(signatory);
    }
}
