package org.benchtrail.core.method.desk;

import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Method;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Part;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.Requirements;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;

/** A supervisor lets one requirement go unmet. */
public record Waived(String requirement, @FreeText String reason) implements DeskFact {
    public Waived {
        FieldChecks t = new FieldChecks();
        requirement = t.required("requirement", requirement, 60, "Name the requirement.");
        reason = t.required("reason", reason, FieldChecks.PARAGRAPH, "Say why it may go unmet.");
        t.done();
    }

    @Override
    public List<Missing> refusedTo(Actor actor, Situation s) {
        return actor.is(Role.SUPERVISOR)
                ? List.of()
                : Missing.rule("not-your-role", "Only a supervisor waives a requirement: ask for it.", "desk");
    }

    @Override
    public Part takesPart() {
        return Part.JUDGING;
    }

    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        return unsound(s, requirement);
    }

    /** Only a requirement of the present gate, that may be waived and is not met. */
    static List<Missing> unsound(Situation s, String requirement) {
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

    @Override
    public String told(Telling reader) {
        return Told.noted(Told.requirement(requirement), reason);
    }
}
