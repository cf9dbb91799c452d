package org.benchtrail.core.method.theorize;

import java.util.Locale;
import org.benchtrail.core.text.FieldChecks;
import org.jspecify.annotations.Nullable;

/** A cause put forward: from the catalogue ({@code causeId}) or in free words. */
public record TheoryStated(String text, @Nullable String causeId) implements TheorizeFact {
    public TheoryStated {
        FieldChecks t = new FieldChecks();
        text = t.required("text", text, FieldChecks.LINE, "Say what the cause could be.");
        causeId = t.orNull("causeId", causeId, FieldChecks.LINE);
        t.done();
    }

    @Override
    public boolean lateAllowed() {
        return true;
    }

    /** Whether the other one names the same cause, by its catalogue entry or word for word. */
    public boolean sameCause(TheoryStated other) {
        return (causeId != null && causeId.equals(other.causeId))
                || text.toLowerCase(Locale.ROOT).equals(other.text.toLowerCase(Locale.ROOT));
    }
}
