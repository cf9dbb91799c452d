package org.benchtrail.core.practice.drive;

import static org.benchtrail.core.practice.drive.DrivePart.*;

import java.util.ArrayList;
import java.util.List;
import org.benchtrail.core.practice.Chance;
import org.benchtrail.core.practice.Harm;
import org.benchtrail.core.practice.Parameters;
import org.benchtrail.core.practice.drive.DriveWear.Sectors;

/**
 * A drive at one moment of a practice job. Whether it lives is decided beforehand: it dies when what it has been through, in
 * hours with strain counted threefold, has used up a share drawn from the seed.
 *
 * @param counts sectors by now
 * @param damagedFrames what the counter of the link says; it never goes back
 * @param worn hours of daily use since the job began, with strain counted threefold
 * @param backup what there is of a backup
 * @param copied whether the data was copied since the job began
 */
public record Drive(
        Parameters<DrivePart> parts, Sectors counts, double damagedFrames, double worn, Backup backup, boolean copied) {
    private static final double SECONDS = 3600;
    private static final double GIGABYTE = 1e9;
    private static final double SINCE_DAYS = 10 * 24;
    private static final double HISTORY_RATE = 0.05;
    private static final double HISTORY_GROWTH = 0.02;

    /** @param readable whether a file can be read back from it, whatever is claimed */
    public record Backup(boolean claimed, boolean exists, boolean readable) {}

    /** The drive as it is brought in: a failing surface has failed for ten days. */
    public static Drive broughtIn(Parameters<DrivePart> parts, Backup backup) {
        double old = parts.get(OLD_MOVED);
        boolean failing = parts.get(DEATH) > 0;
        double went = failing ? DriveWear.history(HISTORY_RATE, HISTORY_GROWTH, SINCE_DAYS) : 0;
        Sectors counts = new Sectors(0.1 * went, 0.2 * went, old + 0.7 * went);
        return new Drive(parts, counts, 0, 0, backup, false);
    }

    public boolean isDead(Chance chance) {
        return parts.get(DEATH) * worn >= chance.exponential("death");
    }

    /** What somebody may do to it. */
    public enum Act {
        COPY_DATA(8),
        WHOLE_READ(5),
        REPAIR_FILE_SYSTEM(5),
        WRITE_TEST(5),
        RESEAT_PLUG(4),
        OTHER_CABLE(10),
        OTHER_PORT(40),
        OTHER_PLUG(6),
        READ_BACK_BACKUP(6),
        FREE_SPACE(15),
        STOP_TASK(5),
        COOL(10),
        REPLACE_AND_RESTORE(90);

        private final double minutes;

        Act(double minutes) {
            this.minutes = minutes;
        }

        /** Hands-on. */
        public double minutes() {
            return minutes;
        }
    }

    /**
     * @param waiting minutes in which the drive worked alone
     * @param cost of parts
     */
    public record Done(Drive after, double waiting, double cost, List<Harm> harm) {
        public Done {
            harm = List.copyOf(harm);
        }
    }

    public Done act(Act act, Chance chance) {
        return switch (act) {
            case COPY_DATA -> copy(chance);
            case WHOLE_READ -> strained(wholeRead(), List.of(), chance);
            case REPAIR_FILE_SYSTEM -> strained(wholeRead(), tornFiles(), chance);
            case WRITE_TEST -> writeTest(chance);
            case RESEAT_PLUG, OTHER_PLUG -> done(parts.restored(CONTACT));
            case OTHER_CABLE -> done(parts.restored(DAMAGE));
            case FREE_SPACE -> done(parts.restored(FREE));
            case STOP_TASK -> done(parts.restored(BUSY));
            case COOL -> done(parts.restored(TEMPERATURE));
            case OTHER_PORT -> done(parts.restored(PORT_DAMAGE));
            case READ_BACK_BACKUP -> done(parts);
            case REPLACE_AND_RESTORE -> replaced(chance);
        };
    }

    /** After a time of daily use. */
    public Drive ran(double minutes) {
        return used(minutes / 60, 1, damagedFrames);
    }

    /** After a copy of so many gigabytes, which is what makes the counter of the link rise. */
    public Drive copied(double gigabytes) {
        DriveLink link = new DriveLink(parts);
        double hours = gigabytes * GIGABYTE / link.rate() / SECONDS;
        return used(hours, 1, damagedFrames + gigabytes * link.errorsPerGigabyte());
    }

    private Done done(Parameters<DrivePart> changed) {
        return new Done(new Drive(changed, counts, damagedFrames, worn, backup, copied), 0, 0, List.of());
    }

    private double wholeRead() {
        return new DriveWear(parts).wholeRead(counts.pending(), new DriveLink(parts).rate()) / SECONDS;
    }

    private Done copy(Chance chance) {
        DriveLink link = new DriveLink(parts);
        double bytes = parts.get(CAPACITY) * parts.get(USED);
        double hours = bytes / link.rate() / SECONDS;
        Drive used = used(hours, 1, damagedFrames + bytes / GIGABYTE * link.errorsPerGigabyte());
        boolean alive = !used.isDead(chance);
        Drive after = new Drive(used.parts, used.counts, used.damagedFrames, used.worn, backup, copied || alive);
        return new Done(after, hours * 60, 0, after.lossIfDead(chance, this));
    }

    /** Everything is read, so that every bad sector is noticed: it waits from now on. */
    private Done strained(double hours, List<Harm> harm, Chance chance) {
        Drive used = used(hours, DriveWear.STRAIN, damagedFrames);
        Sectors noticed = new Sectors(0, used.counts.pending() + used.counts.bad(), used.counts.moved());
        Drive after = new Drive(parts, noticed, damagedFrames, used.worn, backup, copied);
        List<Harm> all = new ArrayList<>(harm);
        all.addAll(after.lossIfDead(chance, this));
        return new Done(after, hours * 60, 0, all);
    }

    private Drive used(double hours, double strain, double frames) {
        Sectors later = new DriveWear(parts).after(counts, hours);
        return new Drive(parts, later, frames, worn + strain * hours, backup, copied);
    }

    /** What is lost when it dies now: all that no readable copy holds. */
    private List<Harm> lossIfDead(Chance chance, Drive before) {
        boolean dies = isDead(chance) && !before.isDead(chance);
        return dies && !copied ? List.of(lost("The drive died under it")) : List.of();
    }

    private Harm lost(String how) {
        return backup.exists() && backup.readable()
                ? new Harm(Harm.Kind.DATA, how + ": what is newer than the backup is lost.", 60, 0)
                : new Harm(Harm.Kind.DATA, how + ", and no backup can be read: all data is lost.", 240, 0);
    }

    private List<Harm> tornFiles() {
        long files = Math.round(Math.floor(counts.pending() * parts.get(USED)));
        return files == 0 || copied
                ? List.of()
                : List.of(new Harm(
                        Harm.Kind.DATA, "Repaired over unreadable sectors: " + files + " files are torn.", 30, 0));
    }

    private Done writeTest(Chance chance) {
        List<Harm> harm = copied ? List.of() : List.of(lost("The write test wrote over everything"));
        return strained(wholeRead(), harm, chance);
    }

    private Done replaced(Chance chance) {
        Parameters<DrivePart> fresh = parts.restored(NEW_BAD, DEATH, OLD_MOVED);
        boolean read = copied || (backup.exists() && backup.readable());
        boolean late = !copied && isDead(chance);
        List<Harm> harm = !read
                ? List.of(lost("The restore found nothing"))
                : late ? List.of(lost("The old drive is dead")) : List.of();
        return new Done(new Drive(fresh, Sectors.NONE, 0, 0, backup, copied), 0, 70, harm);
    }
}
