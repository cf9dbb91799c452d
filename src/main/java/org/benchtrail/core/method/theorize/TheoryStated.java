package org.benchtrail.core.method.theorize;

import java.util.List;
import java.util.Locale;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Correctable;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.test.CheckPlanned;
import org.benchtrail.core.text.FieldChecks;
import org.jspecify.annotations.Nullable;

/** A cause put forward: from the catalogue ({@code causeId}) or in free words. */
public record TheoryStated(@FreeText String text, @Nullable String causeId) implements TheorizeFact {
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

    @Override
    public Correctable correctable() {
        return Correctable.REPLACED;
    }

    /** One that was chosen or checked stays as it is. */
    @Override
    public List<Missing> keptFrom(JobSheet sheet, StandingFact<?> self, @Nullable Fact replacement, Actor actor) {
        int entry = self.entry();
        boolean used =
                !sheet.all(TheoryChosen.class, c -> c.fact().theory() == entry).isEmpty()
                        || !sheet.all(CheckPlanned.class, c -> c.fact().theory() == entry)
                                .isEmpty();
        return used ? Missing.reliedOn() : List.of();
    }

    @Override
    public String told(Telling reader) {
        return text;
    }
}
