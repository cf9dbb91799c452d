package org.benchtrail.core.method.verify;

import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Situation;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.text.FieldChecks;

public record SymptomRechecked(
        int symptom, boolean gone, @FreeText String how) implements VerifyFact {
    public SymptomRechecked {
        FieldChecks t = new FieldChecks();
        how = t.required("how", how, FieldChecks.PARAGRAPH, "Say how it was looked for.");
        t.done();
    }

    /** One that was struck out is looked for as well, as long as it is owed. */
    @Override
    public List<Missing> unsound(Situation s, Actor actor) {
        boolean owed = s.sheet().owed(SymptomRecorded.class).stream().anyMatch(x -> x.entry() == symptom);
        if (!owed) {
            throw new Invalid("symptom", "Entry " + symptom + " is not there, or not a symptom.");
        }
        return List.of();
    }

    @Override
    public String told(Telling reader) {
        return Told.noted("that of entry " + symptom + (gone ? " is gone" : " is still there"), how);
    }
}
