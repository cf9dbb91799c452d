package org.benchtrail.core.method.identify;

import java.util.Map;
import org.benchtrail.core.method.EnumCopies;
import org.benchtrail.core.method.Lasts;
import org.benchtrail.core.text.FieldChecks;

/** Every hazard looked for; any that is present stops the work until it is cleared. */
public record HazardsScreened(Map<Hazard, Boolean> present) implements IdentifyFact {
    public HazardsScreened {
        FieldChecks t = new FieldChecks();
        present = EnumCopies.map(Hazard.class, present);
        for (Hazard hazard : Hazard.values()) {
            t.require(present.containsKey(hazard), "present." + hazard, "Look for " + hazard.words() + ": yes or no.");
        }
        t.done();
    }

    public boolean any() {
        return present.containsValue(true);
    }

    @Override
    public Lasts lasts() {
        return Lasts.UNTIL_REOPENED;
    }
}
