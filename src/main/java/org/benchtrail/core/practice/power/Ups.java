package org.benchtrail.core.practice.power;

import static org.benchtrail.core.practice.power.PowerPart.*;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.benchtrail.core.practice.Chance;
import org.benchtrail.core.practice.Harm;
import org.benchtrail.core.practice.Parameters;

/**
 * A UPS at one moment of a practice job, with what is plugged into it.
 *
 * @param charge of its battery, 0 to 1
 * @param on whether its outlets carry power
 */
public record Ups(Parameters<PowerPart> parts, List<Load> loads, double charge, boolean on) {
    private static final double OUTAGE_TEST_LEAVES = 0.3;
    private static final double CHARGING_MINUTES = 8 * 60;
    private static final double WORK_LOST = 0.25;
    private static final double BLINK_MINUTES = 0.2;

    public Ups {
        loads = List.copyOf(loads);
    }

    /** The kind of outlet that a lead goes to. */
    public enum Group {
        BATTERY,
        SURGE_ONLY
    }

    /**
     * @param watts what it draws at most
     * @param computer whether work is lost when it stops at once
     */
    public record Load(String name, double watts, Group group, boolean computer) {}

    /** W on battery outlets. */
    public double protectedWatts() {
        return loads.stream()
                .filter(l -> l.group() == Group.BATTERY)
                .mapToDouble(Load::watts)
                .sum();
    }

    /** Per cent of its rating, as its panel says. */
    public double panel() {
        return 100 * protectedWatts() / parts.get(RATING);
    }

    /** What stops at once when the mains fail; all of it if the battery does not carry the load. */
    public List<Load> stopsInAnOutage() {
        boolean carries = new Battery(parts).volts(protectedWatts(), charge).isPresent() && charge > 0;
        return loads.stream()
                .filter(l -> l.group() == Group.SURGE_ONLY || !carries)
                .toList();
    }

    /** What was taken care of before an act. */
    public enum Care {
        WORK_SAVED,
        /** An orderly shutdown is set, and was tried. */
        SHUTDOWN_SET,
        /** Rings off, insulated tool, terminals capped, leads in the maker's order. */
        CAUTION_TAKEN,
        CASES_CLOSED
    }

    /**
     * @param passed what the act answered, where it asks something; else true
     * @param elapsed minutes that it took beside the hands' own
     * @param over whether the job ends with it
     */
    public record Done(Ups after, boolean passed, double elapsed, double cost, boolean over, List<Harm> harm) {
        public Done {
            harm = List.copyOf(harm);
        }
    }

    private Done done(Ups after, boolean passed, double elapsed, List<Harm> harm) {
        return new Done(after, passed, elapsed, 0, false, harm);
    }

    private Ups with(Parameters<PowerPart> changed) {
        return new Ups(changed, loads, charge, on);
    }

    private Ups state(double chargeNow, boolean onNow) {
        return new Ups(parts, loads, chargeNow, onNow);
    }

    /** Ten seconds on battery; one that collapses takes everything with it. */
    public Done selfTest(Set<Care> care) {
        Battery battery = new Battery(parts);
        double watts = protectedWatts();
        if (battery.volts(watts, charge).isEmpty()) {
            return done(state(charge, false), false, 0, stopped(care, 15, "The battery collapsed in the self-test"));
        }
        return done(this, battery.passesSelfTest(watts, charge), 0, List.of());
    }

    /** On battery down to 30 % of its charge, or until it is off. */
    public Done timedRun(Set<Care> care, Chance chance) {
        Battery battery = new Battery(parts);
        double watts = protectedWatts();
        if (battery.volts(watts, charge).isEmpty()) {
            return done(state(charge, false), false, 0, stopped(care, 15, "The battery collapsed"));
        }
        double minutes = battery.runtime(watts) * Math.max(0, charge - OUTAGE_TEST_LEAVES);
        boolean wornOut = parts.get(AGE) < 0.5 && !care.contains(Care.SHUTDOWN_SET);
        if (!wornOut) {
            return done(state(Math.min(charge, OUTAGE_TEST_LEAVES), on), true, minutes, List.of());
        }
        List<Harm> harm = new ArrayList<>();
        harm.add(new Harm(Harm.Kind.WORK, "The server went down hard: its files are checked.", 25, 0));
        if (chance.uniform("day lost") < WORK_LOST) {
            harm.add(new Harm(Harm.Kind.DATA, "A day's work on the server is lost.", 60, 0));
        }
        return done(state(0, false), false, battery.runtime(watts) * charge, harm);
    }

    /** The plug pulled out of the wall: earth goes with it. */
    public Done mainsPulled(Set<Care> care) {
        List<Harm> harm = new ArrayList<>();
        if (!care.contains(Care.CASES_CLOSED)) {
            harm.add(new Harm(
                    Harm.Kind.PERSON, "Without its plug an open device has no earth: somebody got a shock.", 20, 0));
        }
        if (stopsInAnOutage().stream().anyMatch(Load::computer)) {
            harm.addAll(stopped(care, 15, "What was not carried stopped"));
        }
        return done(this, harm.isEmpty(), BLINK_MINUTES, harm);
    }

    private static List<Harm> stopped(Set<Care> care, double minutes, String how) {
        return care.contains(Care.WORK_SAVED)
                ? List.of()
                : List.of(new Harm(Harm.Kind.WORK, how + ": unsaved work is lost.", minutes, 0));
    }

    /** A new set, charged for eight hours; without care for its poles it is dead, and so may somebody be. */
    public Done newBattery(Set<Care> care) {
        if (!care.contains(Care.CAUTION_TAKEN)) {
            Harm harm = new Harm(
                    Harm.Kind.PERSON, "Bare metal lay across the poles: burns, and the unit is dead.", 60, 240);
            return new Done(state(0, false), false, 0, 90, false, List.of(harm));
        }
        Ups fresh = new Ups(parts.restored(AGE, RESISTANCE), loads, Battery.charged(0.3, CHARGING_MINUTES / 60), true);
        return new Done(fresh, true, CHARGING_MINUTES, 90, false, List.of());
    }

    /** A lead to another outlet; what is too much there shuts the UPS off within a minute of its first draw. */
    public Done moved(String load, Group group, Set<Care> care) {
        List<Load> all = loads.stream()
                .map(l -> l.name().equals(load) ? new Load(l.name(), l.watts(), group, l.computer()) : l)
                .toList();
        Ups after = new Ups(parts, all, charge, on);
        if (new Outlets(parts).shutsOff(after.protectedWatts(), 60)) {
            return done(
                    new Ups(parts, all, charge, false), false, 1, stopped(care, 15, "The UPS shut off, overloaded"));
        }
        return done(after, true, 0, List.of());
    }

    public Done otherCable() {
        return done(with(parts.restored(BIT_ERRORS)), true, 0, List.of());
    }

    public Done sensitivitySet() {
        return done(with(parts.restored(TRANSFER)), true, 0, List.of());
    }

    /** Wiring is a licensed electrician's: the job ends here. */
    public Done wiringOpened() {
        Harm harm = new Harm(Harm.Kind.PERSON, "The outlet was opened: only a licensed electrician may.", 0, 0);
        return new Done(this, false, 0, 0, true, List.of(harm));
    }
}
