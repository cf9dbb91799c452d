package org.benchtrail.core.bench;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.benchtrail.core.bench.cooling.ClockHeat;
import org.benchtrail.core.bench.cooling.Fan;
import org.benchtrail.core.bench.cooling.HeatPath;
import org.benchtrail.core.bench.cooling.RoomHeat;
import org.benchtrail.core.bench.cooling.WarmUp;
import org.benchtrail.core.bench.judging.AgainstLimit;
import org.benchtrail.core.bench.judging.BeforeAfter;
import org.benchtrail.core.bench.judging.Meter;
import org.benchtrail.core.bench.judging.Soak;
import org.benchtrail.core.bench.judging.Subset;
import org.benchtrail.core.bench.power.BatteryHealth;
import org.benchtrail.core.bench.power.Mains;
import org.benchtrail.core.bench.power.Rails;
import org.benchtrail.core.bench.power.SupplySize;
import org.benchtrail.core.bench.power.UpsLoad;
import org.benchtrail.core.bench.power.UpsOutlets;
import org.benchtrail.core.bench.power.UpsRuntime;

/** All calculations, in the order in which the bench shows them, found by their stable id. */
public final class Bench {
    private static final List<Calculation<?>> ALL = List.of(
            // power
            new Rails(),
            new SupplySize(),
            new Mains(),
            new UpsOutlets(),
            new UpsLoad(),
            new UpsRuntime(),
            new BatteryHealth(),
            // cooling
            new HeatPath(),
            new ClockHeat(),
            new WarmUp(),
            new Fan(),
            new RoomHeat(),
            // judging
            new Meter(),
            new AgainstLimit(),
            new BeforeAfter(),
            new Soak(),
            new Subset());

    private static final Map<String, Calculation<?>> BY_ID = byId();

    private Bench() {}

    public static List<Calculation<?>> all() {
        return ALL;
    }

    /** The calculation with this id, if there is one. */
    public static Optional<Calculation<?>> find(String id) {
        return Optional.ofNullable(BY_ID.get(id));
    }

    public static List<Calculation<?>> of(Trade trade) {
        return ALL.stream().filter(calculation -> calculation.trade() == trade).toList();
    }

    private static Map<String, Calculation<?>> byId() {
        Map<String, Calculation<?>> byId = new LinkedHashMap<>();
        for (Calculation<?> calculation : ALL) {
            if (byId.put(calculation.id(), calculation) != null) {
                throw new IllegalStateException("two calculations are called " + calculation.id());
            }
        }
        return byId;
    }
}
