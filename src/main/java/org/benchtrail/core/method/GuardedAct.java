package org.benchtrail.core.method;

import java.util.Set;

/**
 * A deed that cautions guard.
 *
 * @param about entry number of the check or action that it carries out; 1 for a live measurement, which belongs to neither
 * @param cautions all that guard it, whether acknowledged or not
 */
public record GuardedAct(int about, Set<Caution> cautions) {
    /** What a live measurement is about that belongs to no check. */
    public static final int NO_CHECK = 1;

    public GuardedAct {
        cautions = EnumCopies.set(Caution.class, cautions);
    }
}
