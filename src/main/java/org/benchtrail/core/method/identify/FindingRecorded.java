package org.benchtrail.core.method.identify;

import java.util.List;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Correctable;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.text.FieldChecks;
import org.jspecify.annotations.Nullable;

/** Something observed that bears on causes. A drive-failure finding puts data first from that moment on. */
public record FindingRecorded(String text, boolean driveFailure) implements EvidenceFact {
    public FindingRecorded {
        FieldChecks t = new FieldChecks();
        text = t.required("text", text, FieldChecks.PARAGRAPH, "Say what was found.");
        t.done();
    }

    @Override
    public Correctable correctable() {
        return Correctable.REPLACED;
    }

    @Override
    public List<Missing> keptFrom(JobSheet sheet, StandingFact<?> self, @Nullable Fact replacement, Actor actor) {
        boolean takenBack = driveFailure && !(replacement instanceof FindingRecorded now && now.driveFailure);
        return takenBack && !actor.is(Role.SUPERVISOR)
                ? Missing.rule(
                        "not-your-role", "Only a supervisor takes a drive-failure finding back.", "data-protected")
                : List.of();
    }
}
