package org.benchtrail.core.practice.power;

import static org.benchtrail.core.practice.power.PowerPart.*;

import java.util.Map;
import org.benchtrail.core.practice.Parameters;

/** What may be wrong with a UPS or the network behind it: other numbers, never another rule. */
public enum PowerFault {
    NONE(Map.of()),
    /** The self-test passes; the runtime does not. */
    WORN_BATTERY(Map.of(AGE, 0.45, RESISTANCE, 0.12)),
    BAD_BLOCK(Map.of(RESISTANCE, 0.35)),
    LONG_CIRCUIT(Map.of(CIRCUIT, 1.2, MAINS, 214.0)),
    SENSITIVITY(Map.of(TRANSFER, 222.0)),
    SMALL_POE_BUDGET(Map.of(POE_BUDGET, 45.0)),
    BAD_PATCH_CABLE(Map.of(BIT_ERRORS, 1e-6));

    private final Map<PowerPart, Double> changes;

    PowerFault(Map<PowerPart, Double> changes) {
        this.changes = changes;
    }

    public Parameters<PowerPart> in(Parameters<PowerPart> sound) {
        return sound.with(changes);
    }
}
