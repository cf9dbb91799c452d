package org.benchtrail.core.method.identify;

import org.benchtrail.core.method.Fact;
import org.benchtrail.core.text.FieldChecks;
import org.jspecify.annotations.Nullable;

public record ReproductionTried(Reproduction outcome, String how) implements IdentifyFact {
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
}
