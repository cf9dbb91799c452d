package org.benchtrail.core.practice.memory;

import static org.benchtrail.core.practice.memory.MemoryPart.*;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.practice.Chance;
import org.benchtrail.core.practice.Draws;
import org.benchtrail.core.practice.Parameters;
import org.benchtrail.core.practice.Stated;

/** Memory out of a seed. Which module or slot is bad is drawn as well. */
public final class MemorySeed {
    /** Errors an hour up to which nobody notices any; ours. */
    public static final double UNNOTICED = 0.05;

    private static final double SPREAD = 0.06;
    private static final Set<MemoryPart> VARIED = EnumSet.of(WEAK, OVER, TEMPERATURE);

    private MemorySeed() {}

    public static Optional<Memory> draw(Chance chance, MemoryFault fault, Stated stated) {
        boolean other = chance.uniform("side") < 0.5;
        boolean changedOver = chance.uniform("order") < 0.5;
        return Draws.first(
                stated,
                draw -> {
                    Parameters<MemoryPart> drawn = Draws.made(chance, draw, VARIED, part -> SPREAD, stated, fault::in);
                    return new Memory(other ? mirrored(drawn) : drawn, changedOver);
                },
                drawn -> !isSound(drawn));
    }

    private static Parameters<MemoryPart> mirrored(Parameters<MemoryPart> parts) {
        return parts.with(MODULE_A, parts.get(MODULE_B))
                .with(MODULE_B, parts.get(MODULE_A))
                .with(SLOT_1, parts.get(SLOT_2))
                .with(SLOT_2, parts.get(SLOT_1));
    }

    public static boolean isSound(Memory memory) {
        return memory.rate() <= UNNOTICED;
    }
}
