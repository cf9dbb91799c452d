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
import org.benchtrail.core.bench.memory.ModuleFit;
import org.benchtrail.core.bench.network.CopperLink;
import org.benchtrail.core.bench.network.Loss;
import org.benchtrail.core.bench.network.PathThroughput;
import org.benchtrail.core.bench.network.PoeBudget;
import org.benchtrail.core.bench.network.Subnet;
import org.benchtrail.core.bench.network.Transfer;
import org.benchtrail.core.bench.power.BatteryHealth;
import org.benchtrail.core.bench.power.Mains;
import org.benchtrail.core.bench.power.Rails;
import org.benchtrail.core.bench.power.SupplySize;
import org.benchtrail.core.bench.power.UpsLoad;
import org.benchtrail.core.bench.power.UpsOutlets;
import org.benchtrail.core.bench.power.UpsRuntime;
import org.benchtrail.core.bench.storage.Array;
import org.benchtrail.core.bench.storage.BackupTime;
import org.benchtrail.core.bench.storage.DriveFit;
import org.benchtrail.core.bench.storage.DriveHealth;
import org.benchtrail.core.bench.storage.Endurance;
import org.benchtrail.core.bench.voice.Jitter;
import org.benchtrail.core.bench.voice.Voice;
import org.benchtrail.core.bench.wireless.RadioLink;

/** All calculations, in the order in which the bench shows them, found by their stable id. */
public final class Bench {
    private static final List<Calculation<?>> ALL = List.of(
            // power
            Rails.CALCULATION,
            SupplySize.CALCULATION,
            Mains.CALCULATION,
            UpsOutlets.CALCULATION,
            UpsLoad.CALCULATION,
            UpsRuntime.CALCULATION,
            BatteryHealth.CALCULATION,
            // cooling
            HeatPath.CALCULATION,
            ClockHeat.CALCULATION,
            WarmUp.CALCULATION,
            Fan.CALCULATION,
            RoomHeat.CALCULATION,
            // storage
            DriveHealth.CALCULATION,
            DriveFit.CALCULATION,
            Array.CALCULATION,
            BackupTime.CALCULATION,
            Endurance.CALCULATION,
            // memory
            ModuleFit.CALCULATION,
            // network
            Subnet.CALCULATION,
            CopperLink.CALCULATION,
            PoeBudget.CALCULATION,
            PathThroughput.CALCULATION,
            Loss.CALCULATION,
            Transfer.CALCULATION,
            // wireless
            RadioLink.CALCULATION,
            // voice
            Voice.CALCULATION,
            Jitter.CALCULATION,
            // judging
            Meter.CALCULATION,
            AgainstLimit.CALCULATION,
            BeforeAfter.CALCULATION,
            Soak.CALCULATION,
            Subset.CALCULATION);

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
