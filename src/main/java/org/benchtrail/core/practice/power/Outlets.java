package org.benchtrail.core.practice.power;

import static org.benchtrail.core.practice.power.PowerPart.*;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.benchtrail.core.practice.Parameters;

/**
 * The circuit before the UPS, the powered ports and the link behind it.
 *
 * <pre>
 * mains   V = V_s / (1 + R_l SUM P / 230²)
 * port    P_s = V (V - sqrt(V² - 4 R P)) / (2 R), R by the metre
 * loss    1 - (1 - e)^(8 B) one way, with 16 B there and back
 * </pre>
 */
public final class Outlets {
    private static final double NOMINAL = 230;
    private static final double BACK_ABOVE = 8;
    private static final double SHUTS_OFF_ABOVE = 1.1;
    private static final double SHUTS_OFF_AFTER = 60;

    private final Parameters<PowerPart> parts;

    public Outlets(Parameters<PowerPart> parts) {
        this.parts = parts;
    }

    /** V at an outlet of the circuit while it carries so many W at the nominal voltage. */
    public double mains(double watts) {
        return parts.get(MAINS) / (1 + parts.get(CIRCUIT) * watts / (NOMINAL * NOMINAL));
    }

    /** Whether the UPS runs from its battery; once there it goes back only well above. */
    public boolean onBattery(double watts, boolean alreadyThere) {
        return mains(watts) < parts.get(TRANSFER) + (alreadyThere ? BACK_ABOVE : 0);
    }

    public boolean isOverloaded(double watts) {
        return watts > parts.get(RATING);
    }

    /** Whether that load for so many seconds shuts it off. */
    public boolean shutsOff(double watts, double seconds) {
        return watts > SHUTS_OFF_ABOVE * parts.get(RATING) && seconds >= SHUTS_OFF_AFTER;
    }

    /**
     * @param watts at the device
     * @param metres of cable
     * @param priority 1 is kept longest
     */
    public record Port(int number, double watts, double metres, int priority) {}

    /** W that the switch sends for that much at the device. */
    public double sent(Port port) {
        double ohm = parts.get(POE_OHM) * port.metres() / 100;
        double volts = parts.get(POE_VOLTS);
        return ohm == 0
                ? port.watts()
                : volts * (volts - Math.sqrt(volts * volts - 4 * ohm * port.watts())) / (2 * ohm);
    }

    /** The ports that stay on within the budget: the least important goes off first, of two alike the higher number. */
    public List<Port> poweredOf(List<Port> ports) {
        List<Port> on = new ArrayList<>(ports);
        on.sort(Comparator.comparingInt(Port::priority).thenComparingInt(Port::number));
        while (on.stream().mapToDouble(this::sent).sum() > parts.get(POE_BUDGET)) {
            on.remove(on.size() - 1);
        }
        return List.copyOf(on);
    }

    /** The chance that a frame of so many bytes does not come back. */
    public double lossThereAndBack(int bytes) {
        return -Math.expm1(16.0 * bytes * Math.log1p(-parts.get(BIT_ERRORS)));
    }

    /** How many echoes of that size show at least one loss with that chance. */
    public int echoesToSee(int bytes, double chance) {
        return (int) Math.ceil(Math.log1p(-chance) / Math.log1p(-lossThereAndBack(bytes)));
    }
}
