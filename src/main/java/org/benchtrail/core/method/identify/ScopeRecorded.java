package org.benchtrail.core.method.identify;

import org.benchtrail.core.text.Texts;

public record ScopeRecorded(Scope scope, String note) implements IdentifyFact {
    public ScopeRecorded {
        Texts t = new Texts();
        t.require(scope != null, "scope", "Choose one, several or a site.");
        note = t.optional("note", note, Texts.PARAGRAPH);
        t.done();
    }
}
