package org.benchtrail.core.training;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.benchtrail.core.practice.Chance;
import org.benchtrail.core.practice.job.DeviceAct;
import org.benchtrail.core.practice.job.OwnJob;
import org.benchtrail.core.practice.job.PracticeDevice;
import org.benchtrail.core.practice.job.Seen;
import org.jspecify.annotations.Nullable;

/**
 * By how much what can be looked at and measured differs between the faults of a mentor's job, in standard deviations: the difference
 * of the means over the root of the mean of the two variances, over the same seeds of each. A yes counts 1 and a no 0.
 */
final class ReadingsApart {
    /** Where fewer devices show the symptom with a fault, it is no rival; and fewer values are no sample. */
    private static final int FEWEST = 20;

    private static final double SAME = 1e-9;

    private final OwnJob job;
    private final int seeds;
    private final List<DeviceAct> acts;
    private final Map<String, List<PracticeDevice>> devices = new HashMap<>();
    private final Map<String, Map<DeviceAct, double[]>> values = new HashMap<>();

    ReadingsApart(OwnJob job, int seeds) {
        this.job = job;
        this.seeds = seeds;
        acts = job.family().acts().stream()
                .filter(a -> a.way() == DeviceAct.Way.LOOK || a.way() == DeviceAct.Way.MEASURE)
                .collect(Collectors.toMap(a -> a, this::elapsed))
                .entrySet()
                .stream()
                .sorted(Map.Entry.<DeviceAct, Double>comparingByValue()
                        .thenComparing(e -> e.getKey().name()))
                .map(Map.Entry::getKey)
                .toList();
    }

    /** Minutes worked and waited, on one device. */
    private double elapsed(DeviceAct act) {
        return job.family().faults().stream()
                .flatMap(fault -> job.device(new Chance(OwnJobCheck.seed(0)), fault).stream())
                .findFirst()
                .map(device -> device.act(act))
                .map(answer -> answer.handsOn() + answer.waiting())
                .orElse(act.minutes());
    }

    /**
     * What tells two faults apart.
     *
     * @param act the soonest that does; where none does, the one that comes nearest; null if none differs at all
     * @param deviations by which it differs
     */
    record Apart(@Nullable DeviceAct act, double deviations) {}

    /** Whether enough devices of this job show the symptom with that fault. */
    boolean isPossible(String fault) {
        return devices(fault).size() >= FEWEST;
    }

    /** Looks no further than to the first act that differs by so much. */
    Apart between(String fault, String other, double enough) {
        Apart best = new Apart(null, 0);
        for (DeviceAct act : acts) {
            double deviations = deviations(values(fault, act), values(other, act));
            if (deviations > best.deviations) {
                best = new Apart(act, deviations);
            }
            if (deviations >= enough) {
                return best;
            }
        }
        return best;
    }

    static double deviations(double[] one, double[] other) {
        if (one.length < FEWEST || other.length < FEWEST) {
            return 0;
        }
        double here = Arrays.stream(one).average().orElseThrow();
        double there = Arrays.stream(other).average().orElseThrow();
        double apart = Math.abs(here - there);
        return apart <= SAME * Math.max(1, Math.abs(here))
                ? 0
                : apart / Math.sqrt((variance(one, here) + variance(other, there)) / 2);
    }

    private static double variance(double[] values, double mean) {
        return Arrays.stream(values).map(v -> (v - mean) * (v - mean)).sum() / (values.length - 1);
    }

    private List<PracticeDevice> devices(String fault) {
        return devices.computeIfAbsent(
                fault,
                f -> IntStream.range(0, seeds)
                        .mapToObj(i -> job.device(new Chance(OwnJobCheck.seed(i)), f))
                        .flatMap(Optional::stream)
                        .toList());
    }

    private double[] values(String fault, DeviceAct act) {
        return values.computeIfAbsent(fault, f -> new HashMap<>())
                .computeIfAbsent(
                        act,
                        a -> devices(fault).stream()
                                .flatMapToDouble(device -> value(device, a))
                                .toArray());
    }

    private static DoubleStream value(PracticeDevice device, DeviceAct act) {
        PracticeDevice ready = device;
        for (DeviceAct before : prepared(act)) {
            ready = ready.act(before).after();
        }
        Seen seen = ready.act(act).seen();
        if (seen == null || seen.value().equals(Seen.UNKNOWN)) {
            return DoubleStream.empty();
        }
        return DoubleStream.of(
                seen.gauge() != null
                        ? Double.parseDouble(seen.value())
                        : seen.value().equals("yes") ? 1 : 0);
    }

    /** What is prudent before an act, and what is before that, each once. */
    private static Set<DeviceAct> prepared(DeviceAct act) {
        Set<DeviceAct> all = new LinkedHashSet<>();
        List<DeviceAct> own = new ArrayList<>(act.prudent());
        own.forEach(p -> all.addAll(prepared(p)));
        all.addAll(own);
        return all;
    }
}
