package org.benchtrail.core.method.document;

import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;
import org.jspecify.annotations.Nullable;

public record CauseNamed(@FreeText String cause, @Nullable String causeId, Sureness sureness) implements DocumentFact {
    public CauseNamed {
        FieldChecks t = new FieldChecks();
        cause = t.required("cause", cause, FieldChecks.LINE, "Name the cause.");
        causeId = t.orNull("causeId", causeId, FieldChecks.LINE);
        t.require(sureness != null, "sureness", "Say how the cause is known.");
        t.done();
    }

    @Override
    public String told(Telling reader) {
        return Told.all(cause, sureness.words());
    }
}
