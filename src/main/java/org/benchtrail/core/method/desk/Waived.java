package org.benchtrail.core.method.desk;

import org.benchtrail.core.text.Texts;

/** A supervisor lets one requirement go unmet. */
public record Waived(String requirement, String reason) implements DeskFact {
    public Waived {
        Texts t = new Texts();
        requirement = t.required("requirement", requirement, 60, "Name the requirement.");
        reason = t.required("reason", reason, Texts.PARAGRAPH, "Say why it may go unmet.");
        t.done();
    }
}
