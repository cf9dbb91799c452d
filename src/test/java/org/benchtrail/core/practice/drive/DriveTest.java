package org.benchtrail.core.practice.drive;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.IntStream;
import org.benchtrail.core.practice.Chance;
import org.benchtrail.core.practice.Harm;
import org.benchtrail.core.practice.Parameters;
import org.benchtrail.core.practice.drive.Drive.Act;
import org.benchtrail.core.practice.drive.Drive.Backup;
import org.benchtrail.core.practice.drive.Drive.Done;
import org.benchtrail.core.practice.drive.DriveWear.Sectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DriveTest {
    private static final Parameters<DrivePart> SOUND = Parameters.sound();
    private static final Parameters<DrivePart> FAILING = DriveFault.FAILING_SURFACE.in(SOUND);
    private static final Backup READABLE = new Backup(true, true, true);
    private static final Backup NEVER_READ = new Backup(true, true, false);
    private static final Chance CHANCE = new Chance(new byte[32]);

    private static void close(double expected, double actual) {
        assertEquals(expected, actual, 1e-4 * Math.abs(expected));
    }

    @ParameterizedTest
    @CsvSource({
        "1, 4.7216, 1.1743, 0.1041",
        "2, 7.5854, 3.7156, 0.6989",
        "4, 10.3760, 9.5898, 4.0342",
        "8, 11.7802, 17.9435, 18.2763"
    })
    void sectors_followTheClosedForm(double hours, double bad, double pending, double moved) {
        Sectors after = new DriveWear(FAILING).after(Sectors.NONE, hours);
        assertEquals(bad, after.bad(), 6e-5);
        assertEquals(pending, after.pending(), 6e-5);
        assertEquals(moved, after.moved(), 6e-5);
        close(6 * hours, after.all());
        Sectors half = new DriveWear(FAILING).after(Sectors.NONE, hours / 2);
        assertEquals(pending, new DriveWear(FAILING).after(half, hours / 2).pending(), 6e-5);
    }

    @Test
    void equalRates_areTheLimitOfUnequalOnes() {
        Parameters<DrivePart> equal = FAILING.with(DrivePart.MOVED, 0.5);
        Parameters<DrivePart> near = FAILING.with(DrivePart.MOVED, 0.5 + 1e-6);
        assertEquals(
                new DriveWear(near).after(Sectors.NONE, 3).pending(),
                new DriveWear(equal).after(Sectors.NONE, 3).pending(),
                1e-4);
    }

    @Test
    void surface_followsItsChecks() {
        close(1.5402, DriveWear.history(0.05, 0.02, 24));
        close(8.0517, DriveWear.history(0.05, 0.02, 72));
        close(69.4730, DriveWear.history(0.05, 0.02, 168));
        close(301.2760, DriveWear.history(0.05, 0.02, 240));
        DriveWear wear = new DriveWear(FAILING);
        close(29.96, 60 * wear.hoursToSee(0.95));
        assertEquals(111.11, wear.wholeRead(0, 150e6) / 60, 0.005);
        assertEquals(115.91, wear.wholeRead(24, 150e6) / 60, 0.005);
        Parameters<DrivePart> slow = FAILING.with(DrivePart.RECOVERY, 45);
        assertEquals(129.11, new DriveWear(slow).wholeRead(24, 150e6) / 60, 0.005);
        close(2.4, wear.lostInCopy(2));
        assertEquals(0.0907, Math.exp(-wear.lostInCopy(2)), 5e-5);
        assertEquals(0.0582, wear.deathBy(2, 0), 5e-5);
        assertEquals(0.2027, wear.deathBy(2, 1.85), 5e-5);
    }

    @ParameterizedTest
    @CsvSource({
        "1e-6, 0.12207, 149.973",
        "1e-5, 1.22072, 149.726",
        "2e-4, 24.4189, 144.700",
        "5e-3, 613.419, 78.1198",
        "2e-2, 2491.23, 31.6666"
    })
    void link_slowsDownAsItErrs(double damage, double errors, double megabytes) {
        DriveLink link = new DriveLink(SOUND.with(DrivePart.DAMAGE, damage));
        close(errors, link.errorsPerGigabyte());
        close(megabytes, link.rate() / 1e6);
    }

    @Test
    void link_followsItsChecks() {
        close(24.54, new DriveLink(SOUND.with(DrivePart.DAMAGE, 1e-6)).gigabytesToClear(0.95));
        close(0.12268, new DriveLink(SOUND.with(DrivePart.DAMAGE, 2e-4)).gigabytesToClear(0.95));
        DriveLink plug = new DriveLink(DriveFault.POWER_PLUG.in(SOUND));
        close(10.05, plug.voltsSpinningUp());
        close(11.45, plug.voltsRunning());
        assertTrue(plug.restarts());
        assertFalse(new DriveLink(SOUND.with(DrivePart.CONTACT, 0.92)).restarts());
        assertTrue(new DriveLink(SOUND.with(DrivePart.CONTACT, 0.93)).restarts());
    }

    @Test
    void heat_growsSectorsUntilItIsCooled() {
        Drive hot = Drive.broughtIn(DriveFault.HOT_DRIVE.in(SOUND), READABLE);
        assertTrue(new DriveWear(hot.parts()).rate() > 0.4);
        assertEquals(0, new DriveWear(hot.act(Act.COOL, CHANCE).after().parts()).rate());
    }

    /** Cable and port look the same until one of them is changed. */
    @Test
    void alikePair_isToldApartByTheSwap() {
        Drive cable = Drive.broughtIn(DriveFault.DATA_CABLE.in(SOUND), READABLE);
        Drive port = Drive.broughtIn(DriveFault.PORT.in(SOUND), READABLE);
        double errors = new DriveLink(cable.parts()).errorsPerGigabyte();
        close(errors, new DriveLink(port.parts()).errorsPerGigabyte());
        assertTrue(new DriveLink(cable.act(Act.OTHER_CABLE, CHANCE).after().parts()).errorsPerGigabyte() < 1);
        close(errors, new DriveLink(port.act(Act.OTHER_CABLE, CHANCE).after().parts()).errorsPerGigabyte());
        assertTrue(new DriveLink(port.act(Act.OTHER_PORT, CHANCE).after().parts()).errorsPerGigabyte() < 1);
    }

    @Test
    void counters_neverGoBack_growthStops() {
        Drive cable = Drive.broughtIn(DriveFault.DATA_CABLE.in(SOUND), READABLE);
        Drive copied = cable.act(Act.COPY_DATA, CHANCE).after();
        close(400 * 613.419, copied.damagedFrames());
        Drive mended = copied.act(Act.OTHER_CABLE, CHANCE).after();
        Drive again = mended.act(Act.COPY_DATA, CHANCE).after();
        assertEquals(mended.damagedFrames(), again.damagedFrames(), 1);
        assertTrue(again.damagedFrames() >= mended.damagedFrames());
    }

    /** First the whole read, then the copy: dead in about one of five; the copy alone in about one of seventeen. */
    @Test
    void strainBeforeTheCopy_killsFourTimesAsOften() {
        Drive drive = Drive.broughtIn(FAILING, NEVER_READ);
        int jobs = 4000;
        long straight = IntStream.range(0, jobs)
                .filter(i -> drive.act(Act.COPY_DATA, job(i)).after().isDead(job(i)))
                .count();
        long strained = IntStream.range(0, jobs)
                .filter(i -> drive.act(Act.WHOLE_READ, job(i))
                        .after()
                        .act(Act.COPY_DATA, job(i))
                        .after()
                        .isDead(job(i)))
                .count();
        double hours = 400e9 / 150e6 / 3600;
        assertEquals(new DriveWear(FAILING).deathBy(hours, 0), straight / (double) jobs, 0.01);
        double whole = new DriveWear(FAILING).wholeRead(drive.counts().pending(), 150e6) / 3600;
        assertEquals(new DriveWear(FAILING).deathBy(hours, whole), strained / (double) jobs, 0.02);
    }

    private static Chance job(int number) {
        return Chance.ofJob(new byte[] {3}, "drive", number);
    }

    @Test
    void harmfulActs_loseData_andTheHonestOrderLosesNone() {
        Drive drive = Drive.broughtIn(FAILING, NEVER_READ);
        Drive old = Drive.broughtIn(FAILING, READABLE);
        Chance lives = job(IntStream.range(0, 99)
                .filter(i -> !drive.act(Act.WRITE_TEST, job(i))
                        .after()
                        .act(Act.COPY_DATA, job(i))
                        .after()
                        .isDead(job(i)))
                .findFirst()
                .orElseThrow());
        assertEquals(
                Harm.Kind.DATA, drive.act(Act.WRITE_TEST, lives).harm().get(0).kind());
        assertEquals(
                Harm.Kind.DATA,
                drive.act(Act.REPAIR_FILE_SYSTEM, lives).harm().get(0).kind());
        assertEquals(
                240, drive.act(Act.REPLACE_AND_RESTORE, lives).harm().get(0).minutes());
        assertTrue(old.act(Act.REPLACE_AND_RESTORE, lives).harm().isEmpty());
        Drive copied = drive.act(Act.COPY_DATA, lives).after();
        assertTrue(copied.copied());
        assertTrue(copied.act(Act.REPAIR_FILE_SYSTEM, lives).harm().isEmpty());
        Done replaced = copied.act(Act.REPLACE_AND_RESTORE, lives);
        assertTrue(replaced.harm().isEmpty());
        assertEquals(0, new DriveWear(replaced.after().parts()).rate());
        assertEquals(0, replaced.after().counts().all());
    }

    /** A drive bought for a fault of the cable: paid for, and the fault is still there. */
    @Test
    void newDrive_leavesTheCableAsItIs() {
        Drive cable = Drive.broughtIn(DriveFault.DATA_CABLE.in(SOUND), READABLE);
        Done replaced = cable.act(Act.REPLACE_AND_RESTORE, CHANCE);
        assertEquals(70, replaced.cost());
        close(613.419, new DriveLink(replaced.after().parts()).errorsPerGigabyte());
    }

    @Test
    void oldScar_isSeenAndDoesNotGrow() {
        Drive scar = Drive.broughtIn(DriveFault.OLD_SCAR.in(SOUND), READABLE);
        assertEquals(12, scar.counts().moved());
        assertEquals(12, scar.act(Act.COPY_DATA, CHANCE).after().counts().all(), 1e-9);
    }
}
