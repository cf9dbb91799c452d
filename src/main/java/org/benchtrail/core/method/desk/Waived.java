package org.benchtrail.core.method.desk;

import org.benchtrail.core.text.FieldChecks;

/** A supervisor lets one requirement go unmet. */
public record Waived(String requirement, String reason) implements DeskFact {
    public Waived {
        FieldChecks t = new FieldChecks();
        requirement = t.required("requirement", requirement, 60, "Name the requirement.");
        reason = t.required("reason", reason, FieldChecks.PARAGRAPH, "Say why it may go unmet.");
        t.done();
    }
}
