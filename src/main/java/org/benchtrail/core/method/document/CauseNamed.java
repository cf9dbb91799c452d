package org.benchtrail.core.method.document;

import org.benchtrail.core.text.Texts;
import org.jspecify.annotations.Nullable;

public record CauseNamed(String cause, @Nullable String causeId, Sureness sureness) implements DocumentFact {
    public CauseNamed {
        Texts t = new Texts();
        cause = t.required("cause", cause, Texts.LINE, "Name the cause.");
        causeId = t.orNull("causeId", causeId, Texts.LINE);
        t.require(sureness != null, "sureness", "Say how the cause is known.");
        t.done();
    }
}
