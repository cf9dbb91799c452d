package org.benchtrail.core.bench.power;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.benchtrail.core.bench.Numeral;
import org.benchtrail.core.bench.Result.Level;
import org.benchtrail.core.bench.Side;
import org.benchtrail.core.bench.power.OutletLoad.Kind;

/**
 * Deals the loads out to the outlets of a UPS. What must survive an outage comes first, then network gear, servers and storage,
 * then the rest; a load goes on the battery only while an outlet and watts of the rating are left.
 */
final class OutletPlan {
    enum Place {
        BATTERY("battery outlet"),
        SURGE_ONLY("surge-only outlet"),
        WALL("its own wall outlet");

        private final String words;

        Place(String words) {
            this.words = words;
        }

        String words() {
            return words;
        }
    }

    record Placed(OutletLoad load, Place place, Level level, String why) {}

    private final double capacity;
    private int batteryLeft;
    private int surgeLeft;
    private double carried;
    private final List<Placed> placed = new ArrayList<>();

    private OutletPlan(double ratedWatts, int batteryOutlets, int surgeOutlets) {
        capacity = ratedWatts;
        batteryLeft = batteryOutlets;
        surgeLeft = surgeOutlets;
    }

    /** Every load once, in the order in which it was dealt out. */
    static List<Placed> of(List<OutletLoad> loads, double ratedWatts, int batteryOutlets, int surgeOutlets) {
        OutletPlan plan = new OutletPlan(ratedWatts, batteryOutlets, surgeOutlets);
        loads.stream().sorted(Comparator.comparingInt(OutletPlan::rank)).forEach(plan::place);
        return plan.placed;
    }

    private static int rank(OutletLoad load) {
        if (load.kind().keepOffBattery()) {
            return 3;
        }
        if (load.mustSurvive()) {
            return 0;
        }
        return load.kind().infrastructure() ? 1 : 2;
    }

    private void place(OutletLoad load) {
        Kind kind = load.kind();
        if (kind.keepOffUps()) {
            offUps(load);
        } else if (kind.keepOffBattery()) {
            offBattery(load);
        } else if (load.mustSurvive() || kind.infrastructure()) {
            onBattery(load);
        } else {
            add(load, besideBattery(), Level.GOOD, "it need not survive an outage");
        }
    }

    private void offUps(OutletLoad load) {
        String why = load.kind() == Kind.LASER_PRINTER
                ? "the heater of a laser printer draws bursts that overload a UPS; it never goes on the battery"
                : "a heater never goes on a UPS";
        if (load.mustSurvive()) {
            add(load, Place.WALL, Level.BAD, why + ", so this plan cannot carry it through an outage");
        } else {
            add(load, Place.WALL, Level.GOOD, why);
        }
    }

    private void offBattery(OutletLoad load) {
        String why = "printers and scanners stay off the battery side";
        if (load.mustSurvive()) {
            add(
                    load,
                    besideBattery(),
                    Level.CAREFUL,
                    why + ", so it stops in an outage although it was asked to survive");
        } else {
            add(load, besideBattery(), Level.GOOD, why);
        }
    }

    private void onBattery(OutletLoad load) {
        if (batteryLeft == 0) {
            noRoom(load, "no battery outlet is left; do not add a strip");
        } else if (Side.above(carried + load.watts(), capacity)) {
            noRoom(
                    load,
                    Numeral.of(load.watts()) + " W are more than the " + Numeral.of(capacity - carried)
                            + " W left of the UPS's " + Numeral.of(capacity) + " W");
        } else {
            batteryLeft--;
            carried += load.watts();
            add(
                    load,
                    Place.BATTERY,
                    Level.GOOD,
                    load.mustSurvive()
                            ? "it must survive an outage"
                            : "network gear, servers and storage belong on the battery");
        }
    }

    private void noRoom(OutletLoad load, String why) {
        boolean must = load.mustSurvive();
        String next = must ? ": a larger or a second UPS is needed" : ": it stops in an outage";
        add(load, besideBattery(), must ? Level.BAD : Level.CAREFUL, why + next);
    }

    private Place besideBattery() {
        if (surgeLeft == 0) {
            return Place.WALL;
        }
        surgeLeft--;
        return Place.SURGE_ONLY;
    }

    private void add(OutletLoad load, Place place, Level level, String why) {
        placed.add(new Placed(load, place, level, why));
    }
}
