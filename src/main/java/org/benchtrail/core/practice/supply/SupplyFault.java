package org.benchtrail.core.practice.supply;

import static org.benchtrail.core.practice.supply.SupplyPart.*;

import java.util.Map;
import org.benchtrail.core.practice.Parameters;

/** What may be wrong with a supply or its feed: other numbers, never another rule. */
public enum SupplyFault {
    NONE(Map.of()),
    /** The rail holds; a dip of the mains does not pass. Looks like {@link #HIGH_RESISTANCE} to whoever only asks. */
    AGED_CAPACITOR(Map.of(CAPACITANCE, 195e-6)),
    /** Good at rest, and too low under load. Looks like {@link #AGED_CAPACITOR} to whoever only asks. */
    HIGH_RESISTANCE(Map.of(RAIL_OHM, 0.042)),
    /** A standoff where the board has no hole. */
    STANDOFF(Map.of(SHORT_OHM, 0.1)),
    DEAD_OUTLET(Map.of(MAINS, 0.0)),
    /** Good at rest: under load the outlet's own voltage falls. */
    BAD_CONTACT(Map.of(FEED_OHM, 20.0)),
    /** Made for less than what was built in. */
    SMALL_SUPPLY(Map.of(MOST_AMPS, 20.0));

    private final Map<SupplyPart, Double> changes;

    SupplyFault(Map<SupplyPart, Double> changes) {
        this.changes = changes;
    }

    public Parameters<SupplyPart> in(Parameters<SupplyPart> sound) {
        return sound.with(changes);
    }
}
