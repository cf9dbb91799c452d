package org.benchtrail.core.method.identify;

import java.util.List;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.method.Wording;
import org.benchtrail.core.text.FieldChecks;

/** When it began or last worked; {@code known} false says outright that nobody knows. */
public record OnsetRecorded(boolean known, @FreeText String when) implements IdentifyFact {
    public OnsetRecorded {
        FieldChecks t = new FieldChecks();
        when = t.optional("when", when, FieldChecks.LINE);
        t.require(!known || !when.isEmpty(), "when", "Say when it began or last worked, or choose 'unknown'.");
        t.done();
    }

    @Override
    public List<Wording> wordings() {
        return List.of(new Wording(when, Source.REPORTED));
    }

    @Override
    public String told(Telling reader) {
        return known ? when : Told.noted("nobody knows", when);
    }
}
