package org.benchtrail.core.method.document;

import org.benchtrail.core.text.FieldChecks;

/** A signature under the latest summary; who signed stands in the entry's stamp. */
public record Signed(Signatory signatory) implements DocumentFact {
    public Signed {
        FieldChecks t = new FieldChecks();
        t.require(signatory != null, "signatory", "Say whether the assignee or the mentor signs.");
        t.done();
    }
}
