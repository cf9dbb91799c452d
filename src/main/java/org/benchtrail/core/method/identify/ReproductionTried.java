package org.benchtrail.core.method.identify;

import java.util.List;
import org.benchtrail.core.diagnosis.Source;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.FreeText;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Sign;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.method.Wording;
import org.benchtrail.core.text.FieldChecks;
import org.jspecify.annotations.Nullable;

public record ReproductionTried(
        Reproduction outcome, @FreeText String how) implements IdentifyFact {
    public ReproductionTried {
        FieldChecks t = new FieldChecks();
        t.require(outcome != null, "outcome", "Choose yes, no, intermittent or unsafe to try.");
        how = t.required("how", how, FieldChecks.PARAGRAPH, "Say how it was tried, or why it was not.");
        t.done();
    }

    @Override
    public boolean replacesEarlier() {
        return true;
    }

    /** What comes and goes has to stay away for longer. */
    @Override
    public boolean isLessenedBy(@Nullable Fact replacement) {
        return outcome == Reproduction.INTERMITTENT
                && !(replacement instanceof ReproductionTried now && now.outcome == Reproduction.INTERMITTENT);
    }

    /** Not tried, or not seen, says nothing of whether it comes and goes. */
    @Override
    public List<Sign> signs(JobSheet sheet) {
        boolean latest = sheet.latest(ReproductionTried.class)
                .filter(l -> l.fact().equals(this))
                .isPresent();
        boolean told =
                sheet.all(SymptomRecorded.class).stream().anyMatch(s -> s.fact().intermittent());
        if (latest && outcome == Reproduction.INTERMITTENT) {
            return List.of(Sign.of("comes-and-goes/true"));
        }
        return latest && outcome == Reproduction.YES && !told ? List.of(Sign.of("comes-and-goes/false")) : List.of();
    }

    @Override
    public List<Wording> wordings() {
        return List.of(new Wording(how, Source.SEEN));
    }

    @Override
    public String told(Telling reader) {
        return Told.noted(Told.plain(outcome), how);
    }
}
