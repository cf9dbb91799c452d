package org.benchtrail.core.practice.array;

import static org.benchtrail.core.practice.array.ArrayPart.*;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.practice.Chance;
import org.benchtrail.core.practice.Draws;
import org.benchtrail.core.practice.Stated;

/** An array out of a seed. */
public final class ArraySeed {
    /** ms of a write up to which nobody complains; common practice, no source. */
    public static final double SLOWEST = 20;

    private static final double SPREAD = 0.08;
    private static final Set<ArrayPart> VARIED = EnumSet.of(RATE, ACCESS, CACHED, LOAD);

    private ArraySeed() {}

    public static Optional<DriveSet> draw(Chance chance, ArrayFault fault, Stated stated) {
        return Draws.first(
                stated,
                draw -> new DriveSet(Draws.made(chance, draw, VARIED, part -> SPREAD, stated, fault::in), false),
                drawn -> !isSound(drawn));
    }

    public static boolean isSound(DriveSet set) {
        return !set.lost() && !set.isDegraded() && set.latency() <= SLOWEST;
    }
}
