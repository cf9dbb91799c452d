package org.benchtrail.core.method.identify;

import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Lasts;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;

public record DataAnswered(DataState state, @FreeText String note) implements IdentifyFact {
    public DataAnswered {
        FieldChecks t = new FieldChecks();
        t.require(state != null, "state", "Choose how the data stands.");
        note = t.optional("note", note, FieldChecks.PARAGRAPH);
        t.require(state != DataState.IMPOSSIBLE || !note.isEmpty(), "note", "Say why no backup is possible.");
        t.done();
    }

    @Override
    public Lasts lasts() {
        return Lasts.UNTIL_REOPENED;
    }

    @Override
    public String told(Telling reader) {
        return Told.noted(state.words(), note);
    }
}
