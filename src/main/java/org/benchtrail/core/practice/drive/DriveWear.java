package org.benchtrail.core.practice.drive;

import static org.benchtrail.core.practice.drive.DrivePart.*;

import org.benchtrail.core.practice.Parameters;

/**
 * How a drive's surface fails, in means; times in hours.
 *
 * <pre>
 * bad       B' = lambda - r B        not noticed yet
 * pending   P' = r B - w P           noticed by reading, not moved yet
 * moved     R' = w P                 moved by writing
 * </pre>
 *
 * Sectors that go bad are Poisson and death has a constant hazard: simpler than real drives, whose failures cluster.
 */
public final class DriveWear {
    private static final double HOT = 60;
    private static final double DOUBLES = 10;
    /** How much harder a whole read, a repair of the file system or a write test is than daily use. */
    static final double STRAIN = 3;

    private final Parameters<DrivePart> parts;

    public DriveWear(Parameters<DrivePart> parts) {
        this.parts = parts;
    }

    /** Sectors, as means. */
    public record Sectors(double bad, double pending, double moved) {
        public static final Sectors NONE = new Sectors(0, 0, 0);

        public double all() {
            return bad + pending + moved;
        }
    }

    /** 1/h; heat above 60 °C doubles it for every 10 K. */
    public double rate() {
        double hot = Math.max(0, parts.get(TEMPERATURE) - HOT);
        double more = Math.pow(2, hot / DOUBLES);
        return parts.get(NEW_BAD) * more + parts.get(HEAT_BAD) * (more - 1);
    }

    /** In closed form, from any beginning. */
    public Sectors after(Sectors now, double hours) {
        double lambda = rate();
        double r = parts.get(NOTICED);
        double w = parts.get(MOVED);
        double bad = lambda / r + (now.bad() - lambda / r) * Math.exp(-r * hours);
        double first = r * now.bad() - lambda;
        double between = Math.abs(w - r) < 1e-9
                ? first * hours * Math.exp(-r * hours)
                : first * (Math.exp(-r * hours) - Math.exp(-w * hours)) / (w - r);
        double pending = lambda / w + (now.pending() - lambda / w) * Math.exp(-w * hours) + between;
        return new Sectors(bad, pending, now.all() + lambda * hours - bad - pending);
    }

    /** Sectors that went bad in so many hours, at a rate that grows as e^(growth t). */
    public static double history(double rate, double growth, double hours) {
        return rate / growth * Math.expm1(growth * hours);
    }

    /** Hours until one new bad sector has come with that chance; infinite for a sound surface. */
    public double hoursToSee(double chance) {
        return -Math.log1p(-chance) / rate();
    }

    /** Seconds of a read of everything, which also notices all bad sectors. */
    public double wholeRead(double pending, double bytesPerSecond) {
        return parts.get(CAPACITY) / bytesPerSecond + pending * parts.get(RECOVERY);
    }

    /** Mean number of sectors in use that go bad before their turn, in a copy of that many hours at an even pace. */
    public double lostInCopy(double hours) {
        return rate() * parts.get(USED) * hours / 2;
    }

    /** Chance that it has died after hours of daily use and hours of strain. */
    public double deathBy(double hours, double strained) {
        return -Math.expm1(-parts.get(DEATH) * (hours + STRAIN * strained));
    }
}
