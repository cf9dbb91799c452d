package org.benchtrail.core.method.verify;

import java.util.List;
import org.benchtrail.core.method.Reference;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.text.FieldChecks;

public record SymptomRechecked(int symptom, boolean gone, String how) implements VerifyFact {
    public SymptomRechecked {
        FieldChecks t = new FieldChecks();
        how = t.required("how", how, FieldChecks.PARAGRAPH, "Say how it was looked for.");
        t.done();
    }

    @Override
    public List<Reference> references() {
        return List.of(new Reference(symptom, SymptomRecorded.class, "symptom"));
    }
}
