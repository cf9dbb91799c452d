package org.benchtrail.core.practice.job;

import static org.benchtrail.core.practice.array.ArrayPart.*;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.benchtrail.core.practice.Chance;
import org.benchtrail.core.practice.Chance.Instrument;
import org.benchtrail.core.practice.Harm;
import org.benchtrail.core.practice.Parameters;
import org.benchtrail.core.practice.array.ArrayPart;
import org.benchtrail.core.practice.array.ArraySeed;
import org.benchtrail.core.practice.array.DriveSet;
import org.benchtrail.core.practice.drive.Drive;
import org.benchtrail.core.practice.drive.DriveSeed;

/**
 * A file server's array.
 *
 * @param first as it was found
 * @param care what holds at this moment
 */
record ArrayBench(Chance chance, DriveSet first, DriveSet set, TimesDone times, Care care)
        implements BenchDevice<ArrayAct> {
    /** Bays are counted from 0 or from 1: who goes by the number alone takes the wrong one as often as not; ours. */
    private static final double WRONG_BAY = 0.5;
    /** Share of the bad bays in which a drive was replaced before; ours. */
    private static final double FAILED_BEFORE = 0.8;

    private static final double MINUTES = 60;
    private static final double DRIVE_PRICE = 140;
    private static final double BATTERY_PRICE = 60;
    private static final Instrument METER = new Instrument("controller", 0.3, 0.5, 0.1);

    /**
     * @param copied whether the data was copied since the job began
     * @param located whether lamp and serial number were compared since the last drive was moved
     * @param down whether it was shut down in order since it last ran
     */
    record Care(boolean copied, boolean located, boolean down) {}

    static ArrayBench found(Chance chance, DriveSet set) {
        return new ArrayBench(chance, set, set, TimesDone.NONE, new Care(false, false, false));
    }

    private ArrayBench with(DriveSet after, Care then) {
        return new ArrayBench(chance, first, after, times, then);
    }

    private ArrayBench after(DriveSet after) {
        return with(after, new Care(care.copied(), false, false));
    }

    @Override
    public boolean isWell() {
        return ArraySeed.isSound(set);
    }

    @Override
    public Optional<Boolean> isBackedUp() {
        return Optional.of(care.copied() || DriveSeed.backup(chance).readable());
    }

    @Override
    public Class<ArrayAct> acts() {
        return ArrayAct.class;
    }

    @Override
    public ArrayBench counted(ArrayAct act) {
        return new ArrayBench(chance, first, set, times.once(act.name()), care);
    }

    private boolean failedBefore() {
        return first.parts().get(BAY_FAILS) > 0 && chance.uniform("failed before") < FAILED_BEFORE;
    }

    @Override
    public Answer asked(ArrayAct act) {
        boolean isSo = act == ArrayAct.ASK_HARDWARE && failedBefore();
        Seen seen = Reporter.asked(chance, act.name(), isSo);
        return act == ArrayAct.ASK_HARDWARE
                ? Answer.told(this, act, seen, "A drive was replaced in spring.", "Nothing was changed.")
                : Answer.told(this, act, seen, "There was a power cut.", "No power cut, no work in the room.");
    }

    @Override
    public Answer looked(ArrayAct act) {
        Parameters<ArrayPart> parts = set.parts();
        return switch (act) {
            case LOOK_STATE -> told(act, set.isDegraded(), "The array is degraded.", "The array is whole.");
            case LOOK_MEMBERS -> told(act, set.isDegraded(), "One member is marked failed.", "All members are in.");
            case LOOK_CACHE ->
                told(
                        act,
                        !set.isCacheProtected(),
                        "Its battery is bad: the cache is not used for writing.",
                        "Its battery is good.");
            case LOOK_HEALTH ->
                told(act, parts.get(DRIVE_FAILS) > 0, "It says that it has failed.", "It says that it is well.");
            case LOOK_TASKS -> told(act, parts.get(CHECK) > 0, "A check runs, by day too.", "No check runs.");
            case LOOK_LOG ->
                told(act, failedBefore(), "The same bay dropped another drive in spring.", "No bay failed before.");
            case LOOK_REBUILD -> told(act, false, "", "No rebuild is running.");
            case LOOK_EVENTS -> told(act, false, "", "No two dropped together.");
            case LOOK_FOREIGN -> told(act, false, "", "All members are of this set-up.");
            default -> told(act, false, "", "Power modules and fans of the shelf are well.");
        };
    }

    private Answer told(ArrayAct act, boolean isSo, String yes, String no) {
        return Answer.told(this, act, Seen.of(isSo), yes, no);
    }

    @Override
    public Answer measured(ArrayAct act) {
        if (act == ArrayAct.TEST_DRIVE) {
            return drivePutToTheTest(act);
        }
        double shown = act == ArrayAct.LATENCY
                ? Math.max(0, chance.reading(set.latency(), "latency", "volume", METER, times.of(act.name())))
                : 0;
        Seen.Gauge gauge = act == ArrayAct.LATENCY
                ? new Seen.Gauge("write latency", "volume", "controller's own meter", "ms")
                : new Seen.Gauge("media errors of the other members", "members", "drives' own counters", "count");
        String digits = String.format(Locale.ROOT, act == ArrayAct.LATENCY ? "%.1f" : "%.0f", shown);
        return Answer.read(this, act, digits, gauge);
    }

    private Answer drivePutToTheTest(ArrayAct act) {
        if (!set.isDegraded()) {
            return Answer.of(this, act, "No drive is marked, so none was taken out.", new Seen(Seen.UNKNOWN, null));
        }
        Taken taken = taken();
        boolean well = set.parts().get(DRIVE_FAILS) == 0;
        return Answer.told(after(taken.set()), act, Seen.of(well), "It is well there.", "It fails there too.")
                .harming(taken.harm());
    }

    /** @param set after a drive was taken out, the wrong one where nobody compared */
    private record Taken(DriveSet set, List<Harm> harm) {}

    private Taken taken() {
        boolean wrong = !care.located() && chance.uniform("bay") < WRONG_BAY;
        return wrong ? goodOneTaken("Bays count from 0 here: a good member was taken out") : new Taken(set, List.of());
    }

    private Taken goodOneTaken(String how) {
        DriveSet pulled = set.pulled();
        if (!pulled.lost()) {
            return new Taken(
                    pulled,
                    List.of(new Harm(Harm.Kind.WORK, how + ": it is rebuilt over the day, and all wait.", 30, 0)));
        }
        return care.copied()
                ? new Taken(
                        set,
                        List.of(new Harm(
                                Harm.Kind.WORK, how + ": the set is gone, and is restored from the copy.", 120, 0)))
                : new Taken(pulled, List.of(lost(how + ", the second one")));
    }

    private Harm lost(String how) {
        return DriveSeed.backup(chance).readable()
                ? new Harm(
                        Harm.Kind.DATA, how + ": the set is gone, and what is newer than the backup with it.", 180, 0)
                : new Harm(Harm.Kind.DATA, how + ": the set is gone, and no backup can be read.", 300, 0);
    }

    @Override
    public Answer prepared(ArrayAct act) {
        return switch (act) {
            case READ_BACK -> {
                Drive.Backup backup = DriveSeed.backup(chance);
                String words = !backup.exists()
                        ? "There is no backup where it should be."
                        : backup.readable() ? "A file was opened from it." : "No file of it can be opened.";
                yield Answer.of(this, act, words, null);
            }
            case COPY_DATA -> {
                boolean copied = care.copied() || !set.lost();
                String words = set.lost()
                        ? "Nothing can be read any more."
                        : "All folders are copied, and one file was read back.";
                yield Answer.of(with(set, new Care(copied, care.located(), care.down())), act, words, null)
                        .waited(set.lost() ? 0 : set.rebuildHours() * MINUTES);
            }
            case LOCATE ->
                Answer.of(
                        with(set, new Care(care.copied(), true, care.down())),
                        act,
                        "The lamp of one bay blinks, and its serial number is that of the list. Bays count from 0.",
                        null);
            default -> Answer.of(with(set, new Care(care.copied(), care.located(), true)), act, "It is off.", null);
        };
    }

    @Override
    public Answer mended(ArrayAct act) {
        Parameters<ArrayPart> parts = set.parts();
        return switch (act) {
            case REPLACE -> rebuilt(act, parts.restored(DRIVE_FAILS)).costing(DRIVE_PRICE);
            case OTHER_BAY -> rebuilt(act, parts.restored(BAY_FAILS));
            case CACHE_BATTERY -> {
                Harm torn = new Harm(
                        Harm.Kind.DATA, "The cover came off while it ran: what the users had open is torn.", 30, 0);
                yield Answer.of(after(set.with(parts.restored(CHARGE))), act, "Done.", null)
                        .costing(BATTERY_PRICE)
                        .harming(care.down() ? List.of() : List.of(torn));
            }
            case EASE_CHECK -> Answer.of(after(set.with(parts.restored(CHECK))), act, "Done.", null);
            case PULL_TO_SEE -> {
                Taken taken = goodOneTaken("A good member was pulled");
                yield Answer.of(after(taken.set()), act, "A lamp went out.", null)
                        .harming(taken.harm());
            }
            default -> {
                List<Harm> harm =
                        care.copied() ? List.of() : List.of(lost("A new volume was written over the old one"));
                yield Answer.of(after(new DriveSet(parts, set.lost() || !care.copied())), act, "It is empty now.", null)
                        .harming(harm);
            }
        };
    }

    /** A rebuild reads all others to their end: what cannot be read is lost, unless it was copied before. */
    private Answer rebuilt(ArrayAct act, Parameters<ArrayPart> parts) {
        Taken taken = set.isDegraded() ? taken() : goodOneTaken("No drive was marked, and a good one was taken out");
        DriveSet after = taken.set().with(parts);
        boolean rebuilds = !after.lost() && !after.isDegraded();
        List<Harm> harm = new ArrayList<>(taken.harm());
        if (rebuilds && isBackedUp().equals(Optional.of(false)) && chance.uniform("rebuild") < set.rebuildFails()) {
            harm.add(new Harm(
                    Harm.Kind.DATA,
                    "The rebuild met a part that cannot be read, and no copy has it: files are torn.",
                    60,
                    0));
        }
        String words =
                rebuilds ? "The rebuild ran to its end." : "It drops out again before the rebuild gets anywhere.";
        return Answer.of(after(after), act, words, null)
                .waited(rebuilds ? set.rebuildHours() * MINUTES : 10)
                .harming(harm);
    }

    @Override
    public Answer tried(ArrayAct act) {
        boolean gone = isWell();
        return Answer.of(
                        after(set),
                        act,
                        gone
                                ? "An hour of work at its usual pace, and no member is marked."
                                : "It is as it was reported.",
                        Seen.of(!gone))
                .waited(MINUTES);
    }
}
