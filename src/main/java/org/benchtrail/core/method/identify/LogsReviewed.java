package org.benchtrail.core.method.identify;

import java.util.List;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.method.Wording;
import org.benchtrail.core.text.FieldChecks;

public record LogsReviewed(boolean looked, @FreeText String note) implements IdentifyFact {
    public LogsReviewed {
        FieldChecks t = new FieldChecks();
        note = t.required(
                "note",
                note,
                FieldChecks.PARAGRAPH,
                "Say what the logs show (nothing is an answer), or why they were not read.");
        t.done();
    }

    @Override
    public List<Wording> wordings() {
        return List.of(new Wording(note, Source.SEEN));
    }

    @Override
    public String told(Telling reader) {
        return Told.noted(looked ? "read" : "not read", note);
    }
}
