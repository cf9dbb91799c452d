package org.benchtrail.core.site;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.EnumCopies;
import org.benchtrail.core.method.Policy;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.desk.WaitingFor;
import org.jspecify.annotations.Nullable;

/**
 * What a site decides for itself.
 *
 * @param targets how soon a ticket is due, for every priority
 * @param stops for what a hold waits while the clock of the ticket stands still
 * @param mains nominal voltage of the mains where a place names no other: 100, 120 or 230; null if it is not known
 * @param repairOdds the odds that a cause has to have before its repair is advised where tests are left, 1 to 99
 */
public record SiteRules(
        WorkCalendar calendar,
        Map<Priority, Target> targets,
        Set<WaitingFor> stops,
        @Nullable String mains,
        BigDecimal repairOdds,
        Policy policy) {
    public static final Set<String> MAINS = Set.of("100", "120", "230");

    private static final int MINUTES = 60;

    /** @throws Invalid on {@code mains} or {@code targets} */
    public SiteRules {
        new Invalid.Collector()
                .require(mains == null || MAINS.contains(mains), "mains", "Choose 100, 120 or 230 V, or none.")
                .require(
                        targets.keySet().containsAll(Arrays.asList(Priority.values())),
                        "targets",
                        "Give the times of every priority.")
                .throwIfAny();
        targets = Map.copyOf(new EnumMap<>(targets));
        stops = EnumCopies.set(WaitingFor.class, stops);
    }

    /** The hours that a priority has of itself, round the clock; no hold stops it. */
    public static SiteRules usual(@Nullable String mains, BigDecimal repairOdds, Policy policy) {
        Map<Priority, Target> targets = Arrays.stream(Priority.values())
                .collect(Collectors.toMap(
                        Function.identity(), p -> new Target(p.hours() * MINUTES, p.hours() * MINUTES)));
        return new SiteRules(WorkCalendar.ROUND_THE_CLOCK, targets, Set.of(), mains, repairOdds, policy);
    }

    public Target target(Priority priority) {
        return Objects.requireNonNull(targets.get(priority));
    }
}
