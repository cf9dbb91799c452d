package org.benchtrail.core.practice.desktop;

import static org.benchtrail.core.practice.desktop.DesktopPart.*;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.practice.Chance;
import org.benchtrail.core.practice.Draws;
import org.benchtrail.core.practice.Parameters;
import org.benchtrail.core.practice.Stated;

/** A desktop out of a seed: parts that differ a little from job to job, and a fault that shows. */
public final class DesktopSeed {
    /** How far parts lie from their base: enough that no two machines are alike, too little to be a fault. */
    private static final double SPREAD = 0.08;

    private static final double TOO_HOT = 90;

    private static final Set<DesktopPart> VARIED = EnumSet.of(
            IDLE_WATTS,
            LOAD_WATTS,
            OTHER_WATTS,
            DIE_TO_LID,
            LAYER,
            BASE,
            STILL_AIR,
            MOVED_AIR,
            FAN_RATED,
            HEAT_CAPACITY,
            CASE_AIR,
            ROOM);

    private DesktopSeed() {}

    /** The first draw that shows the symptom; empty if none of a hundred does, which is a fault of the family. */
    public static Optional<Parameters<DesktopPart>> draw(Chance chance, DesktopFault fault, Stated stated) {
        return Draws.first(
                stated,
                draw -> Draws.made(chance, draw, VARIED, part -> SPREAD, stated, fault::in),
                DesktopSeed::isTooHot);
    }

    /** What people see: at full load its sensor says so, or it slows down, or it switches off. */
    public static boolean isTooHot(Parameters<DesktopPart> parts) {
        DesktopHeat.Settled settled = new DesktopHeat(parts).settled(1);
        return settled.die() + parts.get(SENSOR_OFFSET) >= TOO_HOT || settled.clock() < 1 || settled.trips();
    }
}
