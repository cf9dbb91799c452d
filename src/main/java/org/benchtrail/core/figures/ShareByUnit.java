package org.benchtrail.core.figures;

import java.util.ArrayList;
import java.util.List;
import org.benchtrail.core.statistics.Funnel;
import org.benchtrail.core.statistics.Proportion;
import org.jspecify.annotations.Nullable;

/**
 * A share of many places, side by side and in no order of merit. Units of which too little is known stand in the table alone.
 *
 * @param units in the order in which they were given
 * @param funnel over those of at least ten; null where there are too few of them, or all are alike
 */
public record ShareByUnit(List<Unit> units, @Nullable Funnel funnel) {
    /** So many units make a funnel; common practice. */
    public static final int ENOUGH = 5;

    /** So many tickets make a unit; common practice. */
    public static final int LARGE = 10;

    /** @param out whether it is worth a look: beyond what chance explains */
    public record Unit(String name, Count count, boolean out) {
        public boolean isLarge() {
            return count.of() >= LARGE;
        }
    }

    public ShareByUnit {
        units = List.copyOf(units);
    }

    /** Of units that are named but not judged yet. */
    public static ShareByUnit of(List<Unit> named) {
        List<Proportion> large =
                named.stream().filter(Unit::isLarge).map(u -> u.count().share()).toList();
        if (large.size() < ENOUGH || isAllAlike(Proportion.together(large))) {
            return new ShareByUnit(
                    named.stream()
                            .map(u -> new Unit(u.name(), u.count(), false))
                            .toList(),
                    null);
        }
        Funnel funnel = Funnel.of(large);
        List<Unit> judged = new ArrayList<>();
        int at = 0;
        for (Unit unit : named) {
            judged.add(new Unit(
                    unit.name(),
                    unit.count(),
                    unit.isLarge() && funnel.units().get(at++).out()));
        }
        return new ShareByUnit(judged, funnel);
    }

    private static boolean isAllAlike(Proportion all) {
        return all.hits() == 0 || all.hits() == all.trials();
    }

    public long large() {
        return units.stream().filter(Unit::isLarge).count();
    }
}
