package org.benchtrail.core.method.identify;

import java.util.List;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Sign;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.method.Wording;
import org.benchtrail.core.text.FieldChecks;

public record ScopeRecorded(Scope scope, @FreeText String note) implements IdentifyFact {
    public ScopeRecorded {
        FieldChecks t = new FieldChecks();
        t.require(scope != null, "scope", "Choose one, several or a site.");
        note = t.optional("note", note, FieldChecks.PARAGRAPH);
        t.done();
    }

    @Override
    public List<Sign> signs(JobSheet sheet) {
        return sheet.latest(ScopeRecorded.class).filter(l -> l.fact().equals(this)).stream()
                .map(l -> Sign.of("scope/" + scope))
                .toList();
    }

    @Override
    public List<Wording> wordings() {
        return List.of(new Wording(note, Source.REPORTED));
    }

    @Override
    public String told(Telling reader) {
        return Told.noted(scope.words(), note);
    }
}
