package org.benchtrail.core.diagnosis;

import java.util.Collections;
import java.util.EnumSet;
import java.util.Set;

/** What a finding's making or a repair can hurt, as the catalogue says it. Which cautions each raises is the method's. */
public enum Danger {
    /** Measuring on live mains or inside a supply. */
    LIVE_MEASUREMENT,
    MAINS,
    /** A device is opened. */
    OPENING,
    BATTERY,
    /** A supply or a display is opened. */
    CHARGE,
    HEAT,
    MOVING_PARTS,
    LIFTING,
    HEIGHT,
    LASER,
    /** A drive is taken out, or moved to another place. */
    DRIVE_MOVED,
    /** Data may be lost without a drive being touched. */
    DATA;

    /** A copy in the order of this list, so that the same catalogue is the same text again. */
    static Set<Danger> inOrder(Set<Danger> dangers) {
        Set<Danger> copy = EnumSet.noneOf(Danger.class);
        copy.addAll(dangers);
        return Collections.unmodifiableSet(copy);
    }
}
