package org.benchtrail.training;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.ZoneId;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.practice.job.Family;
import org.benchtrail.core.statistics.Interval;
import org.benchtrail.core.statistics.Proportion;
import org.benchtrail.core.training.TrialOutcome;
import org.benchtrail.people.Directory;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Moments;
import org.benchtrail.training.TrialStore.Trial;
import org.benchtrail.training.TrialStore.Turn;
import org.jspecify.annotations.Nullable;

/** Tests of the coach: the plans for everybody, figures of all together once the size is reached, one's own for oneself. */
@ApplicationScoped
@Transactional
class TrialQueries {
    private final TrialStore store;
    private final TrialActs acts;
    private final Directory people;

    TrialQueries(TrialStore store, TrialActs acts, Directory people) {
        this.store = store;
        this.acts = acts;
        this.people = people;
    }

    /** Newest first. */
    List<TrialView> all(Actor viewer, ZoneId zone) {
        Permissions.require(Permission.WORK_TICKETS, viewer);
        Map<Integer, Map<String, List<Turn>>> turns = store.turns(null).stream()
                .collect(Collectors.groupingBy(Turn::trial, Collectors.groupingBy(Turn::person)));
        Map<Integer, Long> broken = store.broken();
        Map<String, String> names = people.names();
        return store.trials().stream()
                .map(t -> view(
                        t,
                        turns.getOrDefault(t.id(), Map.of()),
                        broken.getOrDefault(t.id(), 0L),
                        viewer,
                        names.getOrDefault(t.statedBy(), t.statedBy()) + ", " + Moments.text(t.statedAt(), zone)))
                .toList();
    }

    private TrialView view(Trial trial, Map<String, List<Turn>> turns, long broken, Actor viewer, String stated) {
        List<Turn> own = turns.getOrDefault(viewer.account(), List.of());
        long over = turns.values().stream().filter(TrialQueries::areOver).count();
        return new TrialView(
                trial.id(),
                stated,
                trial.question(),
                size(trial),
                trial.stopRule(),
                trial.leftOut(),
                trial.analysis(),
                trial.orderSeed(),
                trial.devices(),
                over + " of " + trial.people(),
                broken,
                figure(trial),
                verdict(trial),
                opened(trial),
                viewer.is(Role.TRAINEE) && own.isEmpty() && trial.ended() == null,
                own.stream().map(TrialQueries::own).toList(),
                !areOver(own) && !own.isEmpty(),
                areOver(own) ? alone(trial, acts.shares(own).without()) : "");
    }

    private static boolean areOver(List<Turn> turns) {
        return !turns.isEmpty() && turns.stream().allMatch(t -> t.ended() != null);
    }

    private static String size(Trial trial) {
        return "Reckoned with " + trial.expected() + " % met at the first try and " + trial.correlation()
                + " % correlation within a job, to see it with 80 %, one-sided at 5 %: " + trial.occasions()
                + " requirements with the coach and as many without. Taken: " + trial.people() + " people with "
                + trial.jobsEach() + " and " + trial.jobsEach() + " jobs each.";
    }

    private static String figure(Trial trial) {
        return trial.ended() == null
                ? ""
                : "With the coach " + points(trial.difference())
                        + " points more are met at the first try than without; one-sided" + " 95 % upper bound "
                        + points(trial.upper()) + " points.";
    }

    private static String points(@Nullable String share) {
        return String.format(Locale.ROOT, "%.1f", 100 * Double.parseDouble(Objects.requireNonNull(share)));
    }

    private static String verdict(Trial trial) {
        if (trial.notWorse() == null) {
            return "";
        }
        return trial.notWorse()
                ? "Work is not worse without the coach by " + trial.margin() + " points or more."
                : "It is not shown that work is no worse without the coach by " + trial.margin()
                        + " points. The texts are needed still: on this site they fade at 85 % instead of 80 %.";
    }

    private static List<String> opened(Trial trial) {
        byte[] secret = trial.secret();
        byte[] salt = trial.salt();
        return secret == null || salt == null
                ? List.of()
                : List.of(HexFormat.of().formatHex(secret), HexFormat.of().formatHex(salt));
    }

    private static TrialView.Own own(Turn turn) {
        Integer job = turn.job();
        String state = turn.ended() != null ? "ended" : job == null ? "not begun" : "open";
        return new TrialView.Own(
                turn.place(),
                Family.valueOf(turn.family()).title(),
                turn.coached() ? "with the coach" : "without the coach",
                state,
                job == null ? 0 : job);
    }

    private static String alone(Trial trial, Proportion without) {
        Interval interval = TrialOutcome.alone(without, trial.plan().design());
        return String.format(
                Locale.ROOT,
                "%d of %d, %.0f %%; with 95 %% between %.0f and %.0f %%",
                without.hits(),
                without.trials(),
                100 * without.share(),
                100 * interval.lower(),
                100 * interval.upper());
    }
}
