package org.benchtrail.core.method.document;

import org.benchtrail.core.text.Texts;

/** A signature under the latest summary; who signed stands in the entry's stamp. */
public record Signed(Signatory signatory) implements DocumentFact {
    public Signed {
        Texts t = new Texts();
        t.require(signatory != null, "signatory", "Say whether the assignee or the mentor signs.");
        t.done();
    }
}
