package org.benchtrail.core.method.desk;

import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Method;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Persons;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.Requirements;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.text.FieldChecks;

/** A supervisor lets one requirement go unmet. */
public record Waived(String requirement, String reason) implements DeskFact {
    public Waived {
        FieldChecks t = new FieldChecks();
        requirement = t.required("requirement", requirement, 60, "Name the requirement.");
        reason = t.required("reason", reason, FieldChecks.PARAGRAPH, "Say why it may go unmet.");
        t.done();
    }

    @Override
    public List<Missing> refusedTo(Actor actor, Situation s) {
        if (!actor.is(Role.SUPERVISOR)) {
            return Missing.rule("not-your-role", "Only a supervisor waives a requirement.", "desk");
        }
        return Persons.hasPlanned(s.sheet(), actor)
                ? Missing.rule("own-work", "Nobody waives a requirement of work of their own.", "desk")
                : List.of();
    }

    /** Only a requirement of the present gate, that may be waived and is not met. */
    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        Requirement waived = Requirements.of(requirement)
                .orElseThrow(() -> new Invalid("requirement", "There is no requirement '" + requirement + "'."));
        if (!waived.waivable()) {
            return Missing.rule("not-waivable", "This requirement cannot be waived by anybody.", waived.code());
        }
        boolean missing = Method.gate(s.sheet(), s.policy(), s.now()).stream()
                .anyMatch(x -> x.requirement() == waived && x.state() == Requirement.State.MISSING);
        return missing
                ? List.of()
                : Missing.rule("nothing-to-waive", "Nothing is missing there now, so nothing can be waived.", "step");
    }
}
