package org.benchtrail.core.practice.job;

import static org.benchtrail.core.practice.drive.DrivePart.*;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.benchtrail.core.practice.Chance;
import org.benchtrail.core.practice.Chance.Instrument;
import org.benchtrail.core.practice.Harm;
import org.benchtrail.core.practice.Parameters;
import org.benchtrail.core.practice.drive.Drive;
import org.benchtrail.core.practice.drive.DriveLink;
import org.benchtrail.core.practice.drive.DrivePart;
import org.benchtrail.core.practice.drive.DriveSeed;

/**
 * A workstation's drive on the bench.
 *
 * @param first the parts as it was brought in
 * @param down whether it was shut down in order since it last ran
 */
record DriveBench(Chance chance, Parameters<DrivePart> first, Drive drive, TimesDone times, boolean down)
        implements BenchDevice<DriveAct> {
    private static final double BASE_LATENCY = 8;
    private static final double LATE = 20;
    private static final double FULL_BELOW = 10;
    private static final double FRAGMENTED = 4;
    private static final double BUSIEST = 0.97;
    /** Share of the reads of an hour that meet one pending sector of two thousand. */
    private static final double MEETS = 2000;

    private static final double MOST_MET = 0.02;
    private static final double TIMES_OUT_ABOVE = 0.5;
    private static final double EXPECTS_ABOVE = 230;
    private static final double CLICK_HEARD = 0.9;
    private static final double BAD_LINK = 1e-4;
    private static final double BAD_CONTACT = 0.9;
    private static final double LOOKS_ASKEW = 0.7;
    private static final double COPY = 10;
    private static final double WORKING = 30;
    private static final double BYTES_A_GB_BY_MINUTE = 1e9 / 60;
    private static final Instrument METER = new Instrument("meter", 0.02, 0.01, 0.01);
    private static final Instrument SENSOR = new Instrument("own sensor", 0, 0.5, 1);

    static DriveBench broughtIn(Chance chance, Parameters<DrivePart> parts) {
        return new DriveBench(chance, parts, Drive.broughtIn(parts, DriveSeed.backup(chance)), TimesDone.NONE, false);
    }

    private DriveBench with(Drive after, boolean nowDown) {
        return new DriveBench(chance, first, after, times, nowDown);
    }

    @Override
    public boolean isWell() {
        return !DriveSeed.isSlow(drive.parts()) && !drive.isDead(chance);
    }

    @Override
    public Optional<Boolean> isBackedUp() {
        return Optional.of(
                drive.copied() || (drive.backup().exists() && drive.backup().readable()));
    }

    @Override
    public Class<DriveAct> acts() {
        return DriveAct.class;
    }

    @Override
    public DriveBench counted(DriveAct act) {
        return new DriveBench(chance, first, drive, times.once(act.name()), down);
    }

    private Answer told(DriveAct act, Seen seen, String yes, String no) {
        return Answer.told(with(drive.ran(act.minutes()), false), act, seen, yes, no);
    }

    @Override
    public Answer asked(DriveAct act) {
        boolean loose = first.get(DAMAGE) > BAD_LINK || first.get(CONTACT) > BAD_CONTACT;
        return switch (act) {
            case ASK_SLOW ->
                told(
                        act,
                        Reporter.asked(chance, "slow", latency() > LATE),
                        "All of it is slow.",
                        "Only some things are.");
            case ASK_MOVED ->
                told(
                        act,
                        Reporter.asked(chance, "moved", loose),
                        "It was moved to another desk.",
                        "Nobody touched it.");
            default -> told(act, Reporter.asked(chance, "comes", loose), "It comes and goes.", "It is always so.");
        };
    }

    /** Mean, ms: what the link, the queue, the full volume and pending sectors make of it. */
    private double latency() {
        Parameters<DrivePart> parts = drive.parts();
        double link = parts.get(RATE) / new DriveLink(parts).rate();
        double queue = 1 - Math.min(BUSIEST, parts.get(BUSY) / 100);
        double full = parts.get(FREE) < FULL_BELOW ? FRAGMENTED : 1;
        double retried =
                1000 * parts.get(RECOVERY) * Math.min(MOST_MET, drive.counts().pending() / MEETS);
        return BASE_LATENCY * link / queue * full + retried;
    }

    @Override
    public Answer looked(DriveAct act) {
        Parameters<DrivePart> parts = drive.parts();
        boolean restarts = new DriveLink(parts).restarts();
        boolean loose = parts.get(DAMAGE) > BAD_LINK || parts.get(CONTACT) > BAD_CONTACT;
        return switch (act) {
            case LOOK_BUSY -> told(act, Seen.of(latency() > LATE), "It is busy all the time.", "It has pauses.");
            case LISTEN ->
                told(
                        act,
                        Seen.of(restarts && chance.uniform("click") < CLICK_HEARD),
                        "It spins up over and over.",
                        "It runs evenly.");
            case LOOK_CABLE ->
                told(
                        act,
                        Seen.of(loose && chance.uniform("askew") < LOOKS_ASKEW),
                        "A plug sits askew.",
                        "Both ends look right.");
            case LOOK_LOG ->
                told(
                                act,
                                Seen.of(drive.counts().pending() > TIMES_OUT_ABOVE || restarts),
                                "Time-outs of the drive, several a day.",
                                "No time-out of the drive.")
                        .withoutSeen();
            case LOOK_SELF ->
                told(
                        act,
                        Seen.of(drive.counts().moved() > EXPECTS_ABOVE),
                        "It says that it expects to fail.",
                        "It says that it is well.");
            case LOOK_LIST -> told(act, Seen.of(drive.isDead(chance)), "It is missing.", "It is listed.");
            default -> told(act, Seen.of(false), "", "They take little.");
        };
    }

    @Override
    public Answer measured(DriveAct act) {
        Parameters<DrivePart> parts = drive.parts();
        double sectors =
                Math.floor(drive.counts().pending()) + Math.floor(drive.counts().moved());
        return switch (act) {
            case COUNTERS ->
                number(act, sectors, "count", "reallocated and pending sectors", "drive", "drive's own log", 0);
            case CRC_GROWTH -> growth(act);
            case FREE_SPACE -> number(act, parts.get(FREE), "%", "free space", "volume", "system's own meter", 1);
            case ACTIVE_TIME -> number(act, parts.get(BUSY), "%", "active time", "drive", "system's own meter", 0);
            case LATENCY -> number(act, latency(), "ms", "mean read latency", "drive", "system's own meter", 1);
            default -> metered(act);
        };
    }

    private Answer metered(DriveAct act) {
        DriveLink link = new DriveLink(drive.parts());
        Parameters<DrivePart> parts = drive.parts();
        return switch (act) {
            case TEMPERATURE ->
                number(
                        act,
                        chance.reading(
                                parts.get(DrivePart.TEMPERATURE), "temperature", "drive", SENSOR, times.of(act.name())),
                        "°C",
                        "drive temperature",
                        "drive",
                        "drive's own sensor",
                        0);
            case PLUG_RUNNING ->
                number(
                        act,
                        chance.reading(link.voltsRunning(), "voltage", "plug", METER, times.of(act.name())),
                        "V",
                        "+12 V running",
                        "drive's plug",
                        "multimeter",
                        2);
            default ->
                number(
                        act,
                        chance.reading(link.voltsSpinningUp(), "voltage", "plug up", METER, times.of(act.name())),
                        "V",
                        "+12 V spinning up",
                        "drive's plug",
                        "multimeter",
                        2);
        };
    }

    private Answer growth(DriveAct act) {
        Drive after = drive.copied(COPY);
        long rise = Math.round(after.damagedFrames()) - Math.round(drive.damagedFrames());
        double minutes = COPY * BYTES_A_GB_BY_MINUTE / new DriveLink(drive.parts()).rate();
        return Answer.of(with(after, false), act, "The counter rose by " + rise + ".", Seen.of(rise > 0))
                .waited(minutes);
    }

    private Answer number(
            DriveAct act, double value, String unit, String quantity, String point, String instrument, int places) {
        String digits = String.format(Locale.ROOT, "%." + places + "f", value);
        return Answer.read(
                with(drive.ran(act.minutes()), false), act, digits, new Seen.Gauge(quantity, point, instrument, unit));
    }

    @Override
    public Answer prepared(DriveAct act) {
        if (act == DriveAct.SHUT_DOWN) {
            return Answer.of(with(drive, true), act, "It is off.", null);
        }
        if (act == DriveAct.READ_BACK) {
            boolean readable = drive.backup().exists() && drive.backup().readable();
            String words = !drive.backup().exists()
                    ? "There is no backup where it should be."
                    : readable ? "A file was opened from it." : "No file of it can be opened.";
            return Answer.of(with(drive.ran(act.minutes()), down), act, words, null);
        }
        Drive.Done done = drive.act(Drive.Act.COPY_DATA, chance);
        String words = done.after().copied()
                ? "All folders are copied, and the newest file was read back."
                : "The drive died while it was copied.";
        return Answer.of(with(done.after(), false), act, words, null)
                .waited(done.waiting())
                .harming(done.harm());
    }

    @Override
    public Answer mended(DriveAct act) {
        Drive.Done done = drive.act(deed(act), chance);
        Answer answer = Answer.of(with(done.after(), false), act, "Done.", null)
                .waited(done.waiting())
                .costing(done.cost());
        boolean pulled = act.prudent().contains(DriveAct.SHUT_DOWN) && !down;
        Harm torn = new Harm(
                Harm.Kind.DATA,
                "A plug was pulled while it was writing: one file is lost, and the rest is checked.",
                25,
                0);
        return answer.harming(pulled ? joined(done.harm(), torn) : done.harm());
    }

    private static List<Harm> joined(List<Harm> harm, Harm more) {
        return Stream.concat(harm.stream(), Stream.of(more)).toList();
    }

    private static Drive.Act deed(DriveAct act) {
        return switch (act) {
            case RESEAT -> Drive.Act.RESEAT_PLUG;
            case OTHER_CABLE -> Drive.Act.OTHER_CABLE;
            case OTHER_PORT -> Drive.Act.OTHER_PORT;
            case OTHER_PLUG -> Drive.Act.OTHER_PLUG;
            case MAKE_ROOM -> Drive.Act.FREE_SPACE;
            case STOP_TASK -> Drive.Act.STOP_TASK;
            case COOL -> Drive.Act.COOL;
            case WHOLE_READ -> Drive.Act.WHOLE_READ;
            case REPAIR_FILES -> Drive.Act.REPAIR_FILE_SYSTEM;
            case WRITE_TEST -> Drive.Act.WRITE_TEST;
            default -> Drive.Act.REPLACE_AND_RESTORE;
        };
    }

    @Override
    public Answer tried(DriveAct act) {
        DriveBench after = with(drive.ran(WORKING), false);
        boolean gone = after.isWell();
        return Answer.of(
                        after,
                        act,
                        gone ? "Half an hour of work without a wait." : "It is as slow as it was reported.",
                        Seen.of(!gone))
                .waited(WORKING);
    }
}
