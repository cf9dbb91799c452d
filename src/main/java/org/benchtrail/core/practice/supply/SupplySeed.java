package org.benchtrail.core.practice.supply;

import static org.benchtrail.core.practice.supply.SupplyPart.*;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.practice.Chance;
import org.benchtrail.core.practice.Draws;
import org.benchtrail.core.practice.Stated;

/** A supply out of a seed. */
public final class SupplySeed {
    /** V: five per cent below +12 V, common practice of desk computers. */
    public static final double LOWEST_RAIL = 11.4;
    /** ms of a dip that a supply has to pass; common practice of desk computers, from memory. */
    public static final double DIP = 16;

    private static final double SPREAD = 0.06;
    private static final double NARROW = 0.005;

    private static final Set<SupplyPart> VARIED =
            EnumSet.of(MAINS, CAPACITANCE, GIVES_UP, EFFICIENCY, IDLE_WATTS, LOAD_WATTS, RAIL, RAIL_OHM);

    private SupplySeed() {}

    public static Optional<Supply> draw(Chance chance, SupplyFault fault, Stated stated) {
        return Draws.first(
                stated,
                draw -> new Supply(Draws.made(chance, draw, VARIED, SupplySeed::spread, stated, fault::in)),
                drawn -> !isSound(drawn));
    }

    /** What is held to a few per cent by its maker, or by the mains. */
    private static double spread(SupplyPart part) {
        return part == RAIL ? NARROW : part == MAINS || part == GIVES_UP || part == EFFICIENCY ? SPREAD / 3 : SPREAD;
    }

    /** Whether it runs, holds its rail at full load, and passes a dip of the mains there. */
    public static boolean isSound(Supply supply) {
        double full = supply.full();
        return supply.carries(full) && supply.rail(full) >= LOWEST_RAIL && supply.holdUp(full) >= DIP;
    }
}
