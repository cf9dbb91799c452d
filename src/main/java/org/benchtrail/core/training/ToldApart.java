package org.benchtrail.core.training;

import java.nio.ByteBuffer;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.benchtrail.core.advice.SheetEvidence;
import org.benchtrail.core.diagnosis.Finding;
import org.benchtrail.core.diagnosis.Model;
import org.benchtrail.core.diagnosis.Ranking;
import org.benchtrail.core.practice.job.DeviceAct;
import org.benchtrail.core.practice.job.Family;
import org.benchtrail.core.practice.job.Truth;

/**
 * The act that tells one fault from another best, by what the devices themselves show over some seeds of each: the catalogue has
 * no say in it but for the names of the values.
 *
 * @param decibans in favour of the fault that is true
 */
public record ToldApart(DeviceAct act, String value, double decibans) {
    private static final int SEEDS = 12;
    private static final int FIRST = 7_000_000;
    private static final double TEN = 10;

    /** By how much the best has to be better than another, so that it can be called the best. */
    private static final double CLEARLY = 3;

    /**
     * The fault that another is taken for, and what tells them apart.
     *
     * @param asGood acts that tell about as much, {@code told}'s among them
     */
    public record Rival(String other, ToldApart told, Set<DeviceAct> asGood) {
        public Rival {
            asGood = Set.copyOf(asGood);
        }
    }

    /**
     * From the fault that the catalogue takes for the likeliest wrong one before the first act. Empty if nothing that the device
     * answers tells them apart.
     */
    public static Optional<Rival> fromRival(Truth truth, Model model) {
        String fault = truth.fault();
        Ties ties = Ties.of(truth.family());
        Set<String> right = ties.causes().getOrDefault(fault, Set.of());
        Ranking ranking = Belief.reported(ties, model).ranking();
        Optional<String> rival = ties.causes().entrySet().stream()
                .filter(e -> e.getValue().stream().noneMatch(right::contains))
                .filter(e -> truth.like(truth.seed(), e.getKey()).found().isPresent())
                .max(Comparator.comparingDouble(e -> e.getValue().stream()
                        .mapToDouble(ranking::probability)
                        .max()
                        .orElse(0)))
                .map(Map.Entry::getKey);
        return rival.flatMap(other -> {
            List<ToldApart> all = all(truth, other, model);
            return all.stream()
                    .max(Comparator.comparingDouble(ToldApart::decibans).thenComparing(t -> -t.act.minutes()))
                    .map(best -> new Rival(
                            other,
                            best,
                            all.stream()
                                    .filter(t -> t.decibans > best.decibans - CLEARLY)
                                    .map(ToldApart::act)
                                    .collect(Collectors.toSet())));
        });
    }

    private static List<ToldApart> all(Truth truth, String other, Model model) {
        Family family = truth.family();
        return family.acts().stream()
                .filter(a -> a.way() == DeviceAct.Way.LOOK || a.way() == DeviceAct.Way.MEASURE)
                .flatMap(a -> Ties.of(family)
                        .finding(a)
                        .flatMap(id -> SheetEvidence.finding(model, id))
                        .flatMap(finding -> between(truth, a, finding, other))
                        .stream())
                .filter(t -> t.decibans > 1)
                .toList();
    }

    private static Optional<ToldApart> between(Truth truth, DeviceAct act, Finding finding, String other) {
        Map<String, Integer> here = counts(truth, act, finding, truth.fault());
        Map<String, Integer> there = counts(truth, act, finding, other);
        return here.entrySet().stream()
                .max(Map.Entry.comparingByValue())
                .map(most -> new ToldApart(
                        act,
                        most.getKey(),
                        TEN * Math.log10((most.getValue() + 0.5) / (there.getOrDefault(most.getKey(), 0) + 0.5))));
    }

    private static Map<String, Integer> counts(Truth truth, DeviceAct act, Finding finding, String fault) {
        Map<String, Integer> counts = new HashMap<>();
        IntStream.range(FIRST, FIRST + SEEDS).forEach(i -> {
            String seed = HexFormat.of()
                    .formatHex(ByteBuffer.allocate(32).putInt(28, i).array());
            truth.like(seed, fault)
                    .found()
                    .map(device -> device.act(act).seen())
                    .ifPresent(seen -> counts.merge(Belief.value(finding, seen), 1, Integer::sum));
        });
        return counts;
    }
}
