package org.benchtrail.training;

import io.quarkus.runtime.Startup;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.practice.job.Family;
import org.benchtrail.core.practice.job.OwnJob;
import org.benchtrail.core.practice.job.Truth;
import org.benchtrail.platform.sql.OwnAccount;
import org.benchtrail.platform.sql.Sql;
import org.benchtrail.platform.sql.SqlText;
import org.benchtrail.trail.TrailEntry;
import org.jspecify.annotations.Nullable;

/** Where practice jobs are kept: the only door to their schema. */
@Startup
@ApplicationScoped
class PracticeStore {
    private final EntityManager database;
    private final SqlText text;

    PracticeStore(EntityManager database) {
        this.database = database;
        text = SqlText.of(PracticeStore.class)
                .having(
                        "begin",
                        "keepTruth",
                        "append",
                        "act",
                        "end",
                        "lock",
                        "job",
                        "entries",
                        "acts",
                        "of",
                        "ended",
                        "first",
                        "silent");
    }

    private Sql sql(String name) {
        return Sql.of(database, text.statement(name));
    }

    private <T> T apart(Supplier<T> statements) {
        return OwnAccount.PRACTICE.during(database, statements);
    }

    /**
     * @param own the mentor's text that it is one of; null if it is none
     * @return number of the new job
     */
    int begin(String person, Truth truth, OwnJobStore.@Nullable Ref own, byte[] salt, Instant now, Instant morning) {
        return apart(() -> begun(person, truth, own, salt, now, morning));
    }

    private int begun(
            String person, Truth truth, OwnJobStore.@Nullable Ref own, byte[] salt, Instant now, Instant morning) {
        int job = sql("begin")
                .with("person", person)
                .with("family", truth.family().name())
                .with("begun", now)
                .with("morning", morning)
                .with("commitment", truth.commitment(salt))
                .value(Integer.class);
        sql("keepTruth")
                .with("job", job)
                .with("seed", truth.seed())
                .with("fault", truth.fault())
                .with("salt", salt)
                .with("own", own == null ? null : own.own())
                .with("version", own == null ? null : own.version())
                .run();
        return job;
    }

    void append(int job, List<TrailEntry> entries, Instant recorded) {
        apart(() -> entries.stream()
                .mapToInt(entry -> sql("append")
                        .with("job", job)
                        .with("entry", entry.entry())
                        .with("at", entry.at())
                        .with("actor", entry.actor())
                        .with("kind", entry.kind())
                        .with("canonical", entry.canonical())
                        .with("hash", entry.hash())
                        .with("words", entry.words())
                        .with("recorded", recorded)
                        .run())
                .sum());
    }

    void act(int job, int place, PracticeJob.Done done) {
        apart(() -> sql("act")
                .with("job", job)
                .with("place", place)
                .with("act", done.act())
                .with("entry", done.entry())
                .with("step", done.step().name())
                .run());
    }

    void end(int job, PracticeJob.State state, Instant now) {
        apart(() -> sql("end")
                .with("job", job)
                .with("state", state.name())
                .with("ended", now)
                .run());
    }

    private record JobRow(
            int id,
            String person,
            String family,
            Instant begun,
            Instant morning,
            String commitment,
            String state,
            @Nullable Instant ended,
            String seed,
            String fault,
            byte[] salt,
            @Nullable String own,
            @Nullable Boolean coached) {}

    private record EntryRow(
            int entry, Instant at, String actor, String kind, byte[] canonical, String hash, byte @Nullable [] words) {}

    private record ActRow(String act, int entry, String step) {}

    /** That person's job, which nobody else changes until the transaction ends. */
    Optional<PracticeJob> locked(int job, String person) {
        return apart(() -> {
            sql("lock").with("job", job).values(Integer.class);
            return read(job, person);
        });
    }

    /** That person's job; empty if there is none, or it is somebody else's. */
    Optional<PracticeJob> job(int job, String person) {
        return apart(() -> read(job, person));
    }

    private Optional<PracticeJob> read(int job, String person) {
        return sql("job")
                .with("job", job)
                .with("person", person)
                .row(JobRow.class)
                .map(this::whole);
    }

    private PracticeJob whole(JobRow row) {
        List<TrailEntry> trail = sql("entries").with("job", row.id).rows(EntryRow.class).stream()
                .map(e -> new TrailEntry(e.entry, e.at, e.actor, e.kind, e.canonical, e.hash, e.words))
                .toList();
        List<PracticeJob.Done> done = sql("acts").with("job", row.id).rows(ActRow.class).stream()
                .map(a -> new PracticeJob.Done(a.act, a.entry, Step.valueOf(a.step)))
                .toList();
        return new PracticeJob(
                row.id,
                row.person,
                row.begun,
                row.morning,
                PracticeJob.State.valueOf(row.state),
                row.commitment,
                new Truth(Family.valueOf(row.family), row.seed, row.fault, written(row.own)),
                row.salt,
                trail,
                done,
                row.coached);
    }

    private static @Nullable OwnJob written(@Nullable String text) {
        return text == null ? null : OwnJobText.read(text).job().orElseThrow();
    }

    /**
     * A job in the list of somebody's own.
     *
     * @param own text of the mentor's job that it is one of; null if it is none
     */
    record Line(
            int id,
            String family,
            Instant begun,
            String state,
            long acts,
            @Nullable String own) {
        /** By the symptom, where there is a text and this release can read it. */
        String title() {
            return Optional.ofNullable(own)
                    .flatMap(text -> OwnJobText.read(text).job())
                    .map(OwnJob::symptom)
                    .orElse(Family.valueOf(family).title());
        }
    }

    List<Line> of(String person) {
        return apart(() -> sql("of").with("person", person).rows(Line.class));
    }

    /** A job that has ended, of which nothing changes any more. */
    record Ended(int id, Instant ended) {}

    List<Ended> ended(String person) {
        return apart(() -> sql("ended").with("person", person).rows(Ended.class));
    }

    /** Whether that person has a job open that is to be worked without the coach. */
    boolean isSilent(String person) {
        return apart(() -> sql("silent").with("person", person).value(Boolean.class));
    }

    /** When that person began to practise; empty if they never did. */
    Optional<Instant> first(String person) {
        return apart(() -> sql("first").with("person", person).values(Instant.class)).stream()
                .findFirst();
    }
}
