package org.benchtrail.core.practice.power;

import static org.benchtrail.core.practice.power.PowerPart.*;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.benchtrail.core.practice.Chance;
import org.benchtrail.core.practice.Draws;
import org.benchtrail.core.practice.Stated;
import org.benchtrail.core.practice.power.Ups.Group;
import org.benchtrail.core.practice.power.Ups.Load;

/** A UPS out of a seed, with a small office on it. */
public final class PowerSeed {
    public static final String SERVER = "server";
    public static final String PRINTER = "printer";
    /** Minutes on battery that the office needs. */
    public static final double NEEDED = 10;
    /** W on the circuit beside the heater, and of the heater. */
    public static final double OFFICE = 500;

    public static final double HEATER = 2000;

    private static final double SPREAD = 0.04;
    private static final Set<PowerPart> VARIED =
            EnumSet.of(AMP_HOURS, PEUKERT, AGE, RESISTANCE, EFFICIENCY, OWN_WATTS, CIRCUIT, MAINS);

    /** How the leads are plugged. */
    public enum Leads {
        RIGHT,
        SERVER_WITHOUT_BATTERY,
        PRINTER_ON_BATTERY
    }

    private PowerSeed() {}

    /** The first draw that shows the symptom; empty if none of a hundred does, which is a fault of the family. */
    public static Optional<Ups> draw(Chance chance, PowerFault fault, Leads leads, Stated stated) {
        return Draws.first(
                stated,
                draw -> new Ups(
                        Draws.made(
                                chance, draw, VARIED, part -> part == MAINS ? SPREAD / 4 : SPREAD, stated, fault::in),
                        loads(chance, leads),
                        1,
                        true),
                drawn -> !isSound(drawn, true));
    }

    private static List<Load> loads(Chance chance, Leads leads) {
        List<Load> loads = new ArrayList<>();
        Group server = leads == Leads.SERVER_WITHOUT_BATTERY ? Group.SURGE_ONLY : Group.BATTERY;
        Group printer = leads == Leads.PRINTER_ON_BATTERY ? Group.BATTERY : Group.SURGE_ONLY;
        loads.add(new Load(SERVER, Math.rint(chance.between("server", 170, 200)), server, true));
        loads.add(new Load("desk computer", Math.rint(chance.between("desk", 110, 130)), Group.BATTERY, true));
        loads.add(new Load("screen", 30, Group.BATTERY, false));
        loads.add(new Load("switch", 35, Group.BATTERY, false));
        loads.add(new Load(PRINTER, 900, printer, false));
        return loads;
    }

    /** Whether it does what the office needs: carries long enough, stays off its battery by day, and is not overloaded. */
    public static boolean isSound(Ups ups, boolean heater) {
        Battery battery = new Battery(ups.parts());
        Outlets outlets = new Outlets(ups.parts());
        double watts = ups.protectedWatts();
        boolean server = ups.loads().stream().anyMatch(l -> l.name().equals(SERVER) && l.group() == Group.BATTERY);
        return server
                && !outlets.isOverloaded(watts)
                && battery.passesSelfTest(watts, 1)
                && battery.runtime(watts) >= NEEDED
                && !outlets.onBattery(OFFICE + (heater ? HEATER : 0), false);
    }
}
