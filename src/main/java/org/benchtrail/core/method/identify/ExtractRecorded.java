package org.benchtrail.core.method.identify;

import java.util.List;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.Correctable;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.method.Wording;
import org.benchtrail.core.text.FieldChecks;

/** A stretch of a log or of what the device said, with where it comes from. */
public record ExtractRecorded(
        @FreeText String source, @FreeText String text) implements EvidenceFact {
    public ExtractRecorded {
        FieldChecks t = new FieldChecks();
        source = t.required("source", source, FieldChecks.LINE, "Name the log or screen that this comes from.");
        text = t.required("text", text, 20_000, "Paste the lines that matter.");
        t.done();
    }

    @Override
    public boolean countsAsEvidence() {
        return true;
    }

    @Override
    public Correctable correctable() {
        return Correctable.REPLACED;
    }

    @Override
    public List<Wording> wordings() {
        return List.of(new Wording(text, Source.SEEN));
    }

    @Override
    public String told(Telling reader) {
        return Told.noted(source, text);
    }
}
