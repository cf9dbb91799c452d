package org.benchtrail.core.method.theorize;

import java.util.List;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.Reference;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;

/**
 * The one theory that is tested next.
 *
 * @param theory entry number
 * @param reason why this one, where it is not the best ranked; else may be empty
 * @param newEvidence what is new, where it was ruled out before; else may be empty
 */
public record TheoryChosen(
        int theory, @FreeText String reason, @FreeText String newEvidence) implements TheorizeFact {
    public TheoryChosen {
        FieldChecks t = new FieldChecks();
        reason = t.optional("reason", reason, FieldChecks.PARAGRAPH);
        newEvidence = t.optional("newEvidence", newEvidence, FieldChecks.PARAGRAPH);
        t.done();
    }

    @Override
    public List<Reference> references() {
        return List.of(new Reference(theory, TheoryStated.class, "theory"));
    }

    @Override
    public boolean restsOnRanking() {
        return true;
    }

    @Override
    public String told(Telling reader) {
        return Told.all("that of entry " + theory, reason, newEvidence);
    }
}
