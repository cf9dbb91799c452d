package org.benchtrail.core.method.identify;

import org.benchtrail.core.text.FieldChecks;

public record ScopeRecorded(Scope scope, String note) implements IdentifyFact {
    public ScopeRecorded {
        FieldChecks t = new FieldChecks();
        t.require(scope != null, "scope", "Choose one, several or a site.");
        note = t.optional("note", note, FieldChecks.PARAGRAPH);
        t.done();
    }
}
