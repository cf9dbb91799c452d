package org.benchtrail.core.method.identify;

import org.benchtrail.core.method.Correctable;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.ServerOnly;
import org.benchtrail.core.method.Telling;
import org.benchtrail.core.method.Told;
import org.benchtrail.core.text.FieldChecks;
import org.jspecify.annotations.Nullable;

/** How long an intermittent fault has to run clean by calculation; it can lengthen the policy's time, not shorten it. */
@ServerOnly
public record SoakTimeReckoned(int minutes, String basis) implements EvidenceFact {
    public SoakTimeReckoned {
        FieldChecks t = new FieldChecks();
        t.require(minutes >= 1 && minutes <= 525_600, "minutes", "Give the time in minutes, 1 to 525600 (a year).");
        basis = t.required("basis", basis, FieldChecks.LINE, "Say how it was reckoned.");
        t.done();
    }

    @Override
    public boolean saidByServer() {
        return true;
    }

    @Override
    public boolean replacesEarlier() {
        return true;
    }

    @Override
    public boolean isLessenedBy(@Nullable Fact replacement) {
        return !(replacement instanceof SoakTimeReckoned now && now.minutes >= minutes);
    }

    @Override
    public Correctable correctable() {
        return Correctable.STRUCK;
    }

    @Override
    public String told(Telling reader) {
        return Told.noted(minutes + " min", basis);
    }
}
