package org.benchtrail.training;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.practice.job.OwnJob;
import org.benchtrail.core.text.PlainText;
import org.benchtrail.people.Directory;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Forbidden;
import org.benchtrail.platform.NotFound;
import org.benchtrail.platform.Stale;

/**
 * All that happens to mentors' jobs. A draft is its author's alone; once a job was given to somebody, supervisors read it and may
 * withdraw it. Whoever is a trainee reads none, whatever else they are.
 */
@ApplicationScoped
@Transactional
class OwnJobActs {
    private final OwnJobStore store;
    private final PracticeActs practice;
    private final Directory people;
    private final Clock clock;

    OwnJobActs(OwnJobStore store, PracticeActs practice, Directory people, Clock clock) {
        this.store = store;
        this.practice = practice;
        this.people = people;
        this.clock = clock;
    }

    static void require(Actor actor) {
        Permissions.require(Permission.WRITE_PRACTICE, actor);
        if (actor.is(Role.TRAINEE)) {
            throw new Forbidden(
                    "A trainee reads and writes no practice jobs: their texts hold what is true of the devices.");
        }
    }

    /** @throws NotFound unless the viewer wrote it, or it was given to somebody and they are a supervisor */
    static OwnJobStore.Row readable(OwnJobStore.Row row, Actor viewer) {
        if (!row.author().equals(viewer.account()) && !(viewer.is(Role.SUPERVISOR) && row.given() > 0)) {
            throw new NotFound("practice job " + row.id());
        }
        return row;
    }

    private OwnJobStore.Row own(int id, Actor actor) {
        require(actor);
        OwnJobStore.Row row = readable(store.locked(id).orElseThrow(() -> new NotFound("practice job " + id)), actor);
        new Invalid.Collector()
                .require(row.author().equals(actor.account()), "form", "Only its author changes, checks or gives it.")
                .require(row.withdrawn() == null, "form", "It is withdrawn: write a new one from its text.")
                .throwIfAny();
        return row;
    }

    private static String whole(String typed) {
        String written = typed.replace("\r\n", "\n");
        new Invalid.Collector()
                .require(!written.isBlank(), "text", "Write the job.")
                .require(
                        written.length() <= OwnJobText.MOST,
                        "text",
                        "Shorten it to " + OwnJobText.MOST + " characters; it has " + written.length() + ".")
                .require(PlainText.isText(written), "text", PlainText.WHAT_TO_DO)
                .throwIfAny();
        return written;
    }

    /** A new job, with its first text. */
    OwnJobStore.Ref create(String typed, Actor actor) {
        require(actor);
        String written = whole(typed);
        OwnJobStore.Ref ref = new OwnJobStore.Ref(store.create(actor.account(), clock.instant()), 1);
        store.save(ref, written, clock.instant());
        return ref;
    }

    /** Another text; the one that stands stays the newest if it is the same. */
    OwnJobStore.Ref save(int id, int version, String typed, Actor actor) {
        OwnJobStore.Row row = own(id, actor);
        String written = whole(typed);
        if (version != row.version()) {
            throw new Stale(row.version());
        }
        if (written.equals(row.text())) {
            return row.ref();
        }
        OwnJobStore.Ref ref = new OwnJobStore.Ref(id, row.version() + 1);
        store.save(ref, written, clock.instant());
        return ref;
    }

    /** The newest text, to be checked. */
    OwnJobStore.Row toCheck(int id, Actor actor) {
        return own(id, actor);
    }

    void give(int id, int version, String person, Actor actor) {
        OwnJobStore.Row row = own(id, actor);
        if (version != row.version()) {
            throw new Stale(row.version());
        }
        new Invalid.Collector()
                .require(
                        Boolean.TRUE.equals(row.clean()),
                        "form",
                        "It is given to nobody before its check has ended without a failing row.")
                .require(
                        trainees(actor).stream().anyMatch(t -> t.account().equals(person)),
                        "person",
                        "Choose one of the trainees.")
                .require(
                        store.people(id).stream()
                                .noneMatch(g -> g.person().equals(person) && g.version() == version && !g.begun()),
                        "person",
                        "They have this job already and have not begun it.")
                .throwIfAny();
        store.give(row.ref(), person, actor.account(), clock.instant());
    }

    /** Whom somebody may give a job: a mentor their own trainees, a supervisor all. */
    List<Actor> trainees(Actor actor) {
        if (!actor.is(Role.SUPERVISOR)) {
            return people.traineesOf(actor.account());
        }
        List<Actor> all = new ArrayList<>(people.workers());
        all.removeIf(a -> !a.is(Role.TRAINEE));
        all.sort(Comparator.comparing(Actor::name));
        return all;
    }

    /** Nobody begins it any more. What was begun goes on. */
    void withdraw(int id, Actor actor) {
        require(actor);
        OwnJobStore.Row row = store.locked(id).orElseThrow(() -> new NotFound("practice job " + id));
        if (readable(row, actor).withdrawn() == null) {
            store.withdraw(id, clock.instant());
        }
    }

    /**
     * Begins a job that the actor was given.
     *
     * @return number of the practice job
     */
    int begin(int given, Actor actor) {
        Permissions.require(Permission.WORK_TICKETS, actor);
        OwnJobStore.Waiting waiting = store.lockedWaiting(given, actor.account())
                .orElseThrow(() -> new Invalid("form", "That job is not yours to begin any more."));
        OwnJob job = OwnJobText.read(waiting.text()).job().orElseThrow();
        int number = practice.begin(job, new OwnJobStore.Ref(waiting.own(), waiting.version()), actor);
        store.begun(given, number);
        return number;
    }
}
