package org.benchtrail.core.practice.drive;

import static org.benchtrail.core.practice.drive.DrivePart.*;

import org.benchtrail.core.practice.Parameters;

/**
 * The cable and the plug. A frame of 8192 bytes is damaged with chance p and sent again after 10 ms:
 *
 * <pre>
 * errors per GB   (10^9 / 8192) p / (1 - p)
 * rate            8192 / (8192 / c + t_r p / (1 - p))
 * plug            V = V_0 - I R_c; below 10.2 V at spin-up the drive restarts
 * </pre>
 */
public final class DriveLink {
    private static final double FRAME = 8192;
    private static final double RETRY = 0.010;
    private static final double GIGABYTE = 1e9;
    private static final double SPIN_UP_AMPS = 2;
    private static final double RUNNING_AMPS = 0.6;
    private static final double RESTARTS_BELOW = 10.2;

    private final Parameters<DrivePart> parts;

    public DriveLink(Parameters<DrivePart> parts) {
        this.parts = parts;
    }

    private double damaged() {
        double share = parts.get(DAMAGE) + parts.get(PORT_DAMAGE);
        return share / (1 - share);
    }

    public double errorsPerGigabyte() {
        return GIGABYTE / FRAME * damaged();
    }

    /** Bytes a second. */
    public double rate() {
        return FRAME / (FRAME / parts.get(RATE) + RETRY * damaged());
    }

    /** Gigabytes to copy without an error before a fault of this size is ruled out with that chance. */
    public double gigabytesToClear(double chance) {
        return -Math.log1p(-chance) / errorsPerGigabyte();
    }

    public double voltsSpinningUp() {
        return parts.get(SUPPLY) - SPIN_UP_AMPS * parts.get(CONTACT);
    }

    public double voltsRunning() {
        return parts.get(SUPPLY) - RUNNING_AMPS * parts.get(CONTACT);
    }

    public boolean restarts() {
        return voltsSpinningUp() < RESTARTS_BELOW;
    }
}
