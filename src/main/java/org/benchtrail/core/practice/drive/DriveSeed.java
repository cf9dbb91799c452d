package org.benchtrail.core.practice.drive;

import static org.benchtrail.core.practice.drive.DrivePart.*;

import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.practice.Chance;
import org.benchtrail.core.practice.Draws;
import org.benchtrail.core.practice.Parameters;
import org.benchtrail.core.practice.Stated;

/** A drive out of a seed: parts that differ from job to job, its faults, and a backup that may be less than is claimed. */
public final class DriveSeed {
    private static final double SPREAD = 0.08;
    private static final double SLOW_BELOW = 0.85;
    private static final double FULL_BELOW = 10;
    private static final double BUSY_ABOVE = 90;
    private static final double HOT_ABOVE = 60;
    private static final double BACKUP_EXISTS = 5 / 6.0;
    private static final double BACKUP_READABLE = 0.8;

    private static final Set<DrivePart> VARIED =
            EnumSet.of(NOTICED, MOVED, RATE, RECOVERY, SUPPLY, USED, FREE, BUSY, TEMPERATURE);

    private DriveSeed() {}

    /** The first draw that shows the symptom; empty if none of a hundred does, which is a fault of the family. */
    public static Optional<Parameters<DrivePart>> draw(Chance chance, Set<DriveFault> faults, Stated stated) {
        return Draws.first(
                stated,
                draw -> Draws.made(
                        chance, draw, VARIED, part -> SPREAD, stated, sound -> DriveFault.allIn(sound, faults)),
                DriveSeed::isSlow);
    }

    /** What people see: it is slow or hangs, because of what it reads, its link, its plug, its space, its heat or its work. */
    public static boolean isSlow(Parameters<DrivePart> parts) {
        DriveLink link = new DriveLink(parts);
        return link.rate() < SLOW_BELOW * parts.get(RATE)
                || link.restarts()
                || new DriveWear(parts).rate() > 0
                || parts.get(FREE) < FULL_BELOW
                || parts.get(BUSY) > BUSY_ABOVE
                || parts.get(TEMPERATURE) > HOT_ABOVE;
    }

    /** Always claimed; really there and readable in two of three jobs. */
    public static Drive.Backup backup(Chance chance) {
        boolean exists = chance.uniform("backup exists") < BACKUP_EXISTS;
        return new Drive.Backup(true, exists, exists && chance.uniform("backup readable") < BACKUP_READABLE);
    }
}
