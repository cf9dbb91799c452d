package org.benchtrail.training;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.practice.job.Family;
import org.benchtrail.core.training.CoachTrial;
import org.benchtrail.core.training.TrialOutcome;
import org.benchtrail.core.training.TrialTurn;
import org.benchtrail.platform.sql.OwnAccount;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.jspecify.annotations.Nullable;

/** Where tests of the coach are kept. A plan and what it came to are added, sealed by the database, and never changed. */
@Startup
@ApplicationScoped
class TrialStore {
    private final EntityManager database;
    private final SqlText text = SqlText.of(TrialStore.class)
            .having(
                    "state",
                    "keepSeed",
                    "trials",
                    "lock",
                    "secret",
                    "agree",
                    "turns",
                    "attempts",
                    "begin",
                    "break",
                    "broken",
                    "conclude",
                    "practised");

    TrialStore(EntityManager database) {
        this.database = database;
    }

    private Sql sql(String name) {
        return Sql.of(database, text.statement(name));
    }

    private <T> T apart(Supplier<T> statements) {
        return OwnAccount.PRACTICE.during(database, statements);
    }

    /**
     * A plan as it was stated, and what it came to.
     *
     * @param orderSeed published
     * @param devices what the seed of the devices is bound by
     * @param ended when its size was reached; null before
     * @param secret the seed of the devices, and its salt; null before
     */
    record Trial(
            int id,
            String statedBy,
            Instant statedAt,
            String question,
            int margin,
            int expected,
            int correlation,
            int occasions,
            int people,
            int jobsEach,
            String orderSeed,
            String devices,
            String stopRule,
            String leftOut,
            String analysis,
            @Nullable Instant ended,
            @Nullable String difference,
            @Nullable String upper,
            @Nullable Boolean notWorse,
            byte @Nullable [] secret,
            byte @Nullable [] salt) {
        CoachTrial plan() {
            return new CoachTrial(margin, expected, correlation, people, jobsEach);
        }
    }

    /**
     * A job of somebody who takes part, in its place.
     *
     * @param job null before it was begun
     * @param ended null before it has ended
     */
    record Turn(
            int trial,
            String person,
            int place,
            String family,
            boolean coached,
            @Nullable Integer attempt,
            @Nullable Integer job,
            @Nullable Instant ended) {}

    int state(CoachTrial plan, Seeds seeds, Actor by, Instant at) {
        int trial = sql("state")
                .with("by", by.account())
                .with("at", at)
                .with("question", plan.question())
                .with("margin", plan.margin())
                .with("expected", plan.expected())
                .with("correlation", plan.correlation())
                .with("occasions", plan.occasionsNeeded())
                .with("people", plan.people())
                .with("jobsEach", plan.jobsEach())
                .with("orderSeed", seeds.order())
                .with("devices", seeds.commitment())
                .with("stopRule", plan.stopRule())
                .with("leftOut", plan.leftOut())
                .with("analysis", plan.analysis())
                .value(Integer.class);
        apart(() -> sql("keepSeed")
                .with("trial", trial)
                .with("secret", seeds.secret())
                .with("salt", seeds.salt())
                .run());
        return trial;
    }

    /** Newest first. */
    List<Trial> trials() {
        return apart(() -> sql("trials").rows(Trial.class));
    }

    /** Nobody else takes part, begins or concludes until the transaction ends. */
    void lock() {
        sql("lock").values(String.class);
    }

    byte[] secret(int trial) {
        return apart(() -> sql("secret").with("trial", trial).value(byte[].class));
    }

    void agree(int trial, String person, List<TrialTurn> turns, Instant at) {
        for (int place = 1; place <= turns.size(); place++) {
            TrialTurn turn = turns.get(place - 1);
            sql("agree")
                    .with("trial", trial)
                    .with("person", person)
                    .with("place", place)
                    .with("family", turn.family().name())
                    .with("coached", turn.coached())
                    .with("at", at)
                    .run();
        }
    }

    /** @param person null for everybody's */
    List<Turn> turns(@Nullable String person) {
        return apart(() -> sql("turns").with("person", person).rows(Turn.class));
    }

    int attempts(Turn turn) {
        return sql("attempts")
                .with("trial", turn.trial)
                .with("person", turn.person)
                .with("place", turn.place)
                .value(Long.class)
                .intValue();
    }

    void begin(Turn turn, int attempt, int job) {
        sql("begin")
                .with("trial", turn.trial)
                .with("person", turn.person)
                .with("place", turn.place)
                .with("attempt", attempt)
                .with("job", job)
                .run();
    }

    void breakOff(int job, String person) {
        sql("break").with("job", job).with("person", person).run();
    }

    private record BrokenRow(int trial, long jobs) {}

    /** How many jobs of each plan were broken off. */
    Map<Integer, Long> broken() {
        return sql("broken").rows(BrokenRow.class).stream().collect(Collectors.toMap(r -> r.trial, r -> r.jobs));
    }

    void conclude(int trial, TrialOutcome outcome, Instant at) {
        sql("conclude")
                .with("trial", trial)
                .with("at", at)
                .with("people", outcome.people())
                .with("difference", Double.toString(outcome.difference()))
                .with("error", Double.toString(outcome.error()))
                .with("upper", Double.toString(outcome.upper()))
                .with("notWorse", outcome.notWorse())
                .run();
    }

    Set<Family> practised(String person) {
        return apart(() -> sql("practised").with("person", person).values(String.class)).stream()
                .map(Family::valueOf)
                .collect(Collectors.toSet());
    }
}
