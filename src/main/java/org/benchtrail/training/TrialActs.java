package org.benchtrail.training;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.statistics.Proportion;
import org.benchtrail.core.training.CoachTrial;
import org.benchtrail.core.training.TrialOutcome;
import org.benchtrail.core.training.TrialTurn;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.NotFound;

/** All that happens in tests of the coach: stated by a supervisor, taken part in by trainees who agree to. */
@ApplicationScoped
@Transactional
class TrialActs {
    /** From the first work on a ticket on. */
    static final Duration BEGINNING = Duration.ofDays(30);

    private final TrialStore store;
    private final CoachQueries coach;
    private final PracticeActs practice;
    private final Clock clock;
    private final SecureRandom random = new SecureRandom();

    TrialActs(TrialStore store, CoachQueries coach, PracticeActs practice, Clock clock) {
        this.store = store;
        this.coach = coach;
        this.practice = practice;
        this.clock = clock;
    }

    /** As it was typed; -1 where no number was. */
    record Asked(int margin, int expected, int correlation, int people, int jobsEach) {}

    /**
     * Another plan, beside those that there are.
     *
     * @throws Invalid naming what has to be put right
     */
    int state(Asked asked, Actor by) {
        Permissions.require(Permission.STATE_TRIALS, by);
        CoachTrial plan = new CoachTrial(asked.margin, asked.expected, asked.correlation, asked.people, asked.jobsEach);
        return store.state(plan, Seeds.drawn(random), by, clock.instant().truncatedTo(ChronoUnit.MICROS));
    }

    /** The order of the person's jobs is fixed here. Whoever takes part already stays as they are. */
    void agree(int number, Actor actor) {
        Permissions.require(Permission.WORK_TICKETS, actor);
        store.lock();
        TrialStore.Trial trial = trial(number);
        new Invalid.Collector()
                .require(actor.is(Role.TRAINEE), "form", "Only trainees have a coach to be tested.")
                .require(trial.ended() == null, "form", "This test has ended.")
                .require(
                        coach.firstLive(actor.account())
                                .filter(first -> !first.plus(BEGINNING).isAfter(clock.instant()))
                                .isPresent(),
                        "form",
                        "Take part from 30 days after your first work on a ticket on.")
                .throwIfAny();
        List<TrialStore.Turn> own = store.turns(actor.account());
        if (own.stream().noneMatch(t -> t.trial() == number)) {
            new Invalid.Collector()
                    .require(
                            own.stream().allMatch(t -> t.ended() != null),
                            "form",
                            "End the jobs of the test that you take part in first.")
                    .throwIfAny();
            store.agree(
                    number,
                    actor.account(),
                    TrialTurn.of(
                            trial.orderSeed(), actor.account(), store.practised(actor.account()), trial.jobsEach()),
                    clock.instant());
        }
    }

    private TrialStore.Trial trial(int number) {
        return store.trials().stream()
                .filter(t -> t.id() == number)
                .findFirst()
                .orElseThrow(() -> new NotFound("test " + number));
    }

    /**
     * Begins the next of the person's jobs, or goes on with the one that is open.
     *
     * @return number of the practice job
     */
    int begin(int number, Actor actor) {
        Permissions.require(Permission.WORK_TICKETS, actor);
        store.lock();
        TrialStore.Turn next = store.turns(actor.account()).stream()
                .filter(t -> t.trial() == number && t.ended() == null)
                .findFirst()
                .orElseThrow(() -> new NotFound("job of yours in test " + number));
        if (next.job() != null) {
            return next.job();
        }
        int attempt = store.attempts(next) + 1;
        int job = practice.begin(Seeds.device(store.secret(number), next, attempt), actor);
        store.begin(next, attempt, job);
        return job;
    }

    /** Ends an open job for a live ticket: it is left out, and counted as that. */
    void breakOff(int job, Actor actor) {
        Permissions.require(Permission.WORK_TICKETS, actor);
        store.lock();
        TrialStore.Turn turn = store.turns(actor.account()).stream()
                .filter(t -> Objects.equals(t.job(), job) && t.ended() == null)
                .findFirst()
                .orElseThrow(() -> new NotFound("open job " + job + " of a test"));
        practice.giveUp(job, actor);
        store.breakOff(Objects.requireNonNull(turn.job()), actor.account());
    }

    /** Once a job has ended: what each test came to whose size is reached by it. */
    void ended() {
        if (store.trials().stream().allMatch(t -> t.ended() != null)) {
            return;
        }
        store.lock();
        Map<Integer, Map<String, List<TrialStore.Turn>>> turns = store.turns(null).stream()
                .collect(Collectors.groupingBy(
                        TrialStore.Turn::trial,
                        Collectors.groupingBy(TrialStore.Turn::person, TreeMap::new, Collectors.toList())));
        for (TrialStore.Trial trial : store.trials()) {
            List<List<TrialStore.Turn>> whole = turns.getOrDefault(trial.id(), Map.of()).values().stream()
                    .filter(of -> of.stream().allMatch(t -> t.ended() != null))
                    .sorted(Comparator.comparing(TrialActs::end))
                    .toList();
            if (trial.ended() == null && whole.size() >= trial.people()) {
                List<TrialOutcome.Shares> shares = new ArrayList<>();
                whole.stream().limit(trial.people()).forEach(of -> shares.add(shares(of)));
                TrialOutcome.of(trial.plan(), shares)
                        .ifPresent(outcome -> store.conclude(trial.id(), outcome, clock.instant()));
            }
        }
    }

    private static Instant end(List<TrialStore.Turn> turns) {
        return turns.stream()
                .map(t -> Objects.requireNonNull(t.ended()))
                .max(Instant::compareTo)
                .orElseThrow();
    }

    /** What one person met on jobs that have all ended. */
    TrialOutcome.Shares shares(List<TrialStore.Turn> turns) {
        return new TrialOutcome.Shares(met(turns, true), met(turns, false));
    }

    private Proportion met(List<TrialStore.Turn> turns, boolean coached) {
        return Proportion.together(turns.stream()
                .filter(t -> t.coached() == coached)
                .map(t -> coach.firstTries(
                        Objects.requireNonNull(t.job()), Objects.requireNonNull(t.ended()), t.person()))
                .toList());
    }
}
