package org.benchtrail.training;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.integrity.Commitment;
import org.benchtrail.core.integrity.HashChain;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Channel;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Origin;
import org.benchtrail.core.method.Policy;
import org.benchtrail.core.method.PolicyFingerprint;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.desk.Remarked;
import org.benchtrail.core.practice.job.Answer;
import org.benchtrail.core.practice.job.Family;
import org.benchtrail.core.practice.job.OwnJob;
import org.benchtrail.core.practice.job.Truth;
import org.benchtrail.core.practice.job.Truth.Played;
import org.benchtrail.core.training.Ties;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.NotFound;
import org.benchtrail.platform.Stale;
import org.benchtrail.site.SiteBook;
import org.benchtrail.ticket.Diagnoses;
import org.benchtrail.ticket.Work;
import org.benchtrail.trail.TrailEntry;
import org.benchtrail.trail.TrailStore;
import org.jspecify.annotations.Nullable;

/** All that happens to practice jobs. They take their time from what is done, and nothing of them reaches a ticket. */
@ApplicationScoped
public class PracticeActs {
    private static final LocalTime MORNING = LocalTime.of(8, 0);

    private final PracticeStore store;
    private final TrailStore trail;
    private final Diagnoses diagnoses;
    private final SiteBook site;
    private final Clock clock;
    private final SecureRandom random = new SecureRandom();

    PracticeActs(PracticeStore store, TrailStore trail, Diagnoses diagnoses, SiteBook site, Clock clock) {
        this.store = store;
        this.trail = trail;
        this.diagnoses = diagnoses;
        this.site = site;
        this.clock = clock;
    }

    /** What an act came to; {@code missing} is empty if it was done. */
    record Outcome(PracticeJob job, List<Missing> missing, boolean kept) {}

    /** A device whose truth nobody knows, from the server's own randomness. */
    @Transactional
    public int begin(Family family, Actor actor) {
        byte[] seed = Commitment.secret(random);
        return begin(Truth.of(family, seed), actor);
    }

    /** One of a mentor's jobs, with chance of its own. */
    @Transactional
    int begin(OwnJob own, OwnJobStore.Ref ref, Actor actor) {
        return begin(Truth.of(own, Commitment.secret(random)), ref, actor);
    }

    @Transactional
    int begin(Truth truth, Actor actor) {
        return begin(truth, null, actor);
    }

    private int begin(Truth truth, OwnJobStore.@Nullable Ref own, Actor actor) {
        Permissions.require(Permission.WORK_TICKETS, actor);
        Instant now = clock.instant();
        Instant morning =
                now.atZone(ZoneOffset.UTC).toLocalDate().atTime(MORNING).toInstant(ZoneOffset.UTC);
        byte[] salt = Commitment.secret(random);
        int job = store.begin(actor.account(), truth, own, salt, now, morning);
        Policy policy = policy();
        Origin origin = new Origin(Channel.PAGE, UUID.randomUUID().toString(), PolicyFingerprint.of(policy), null);
        Entry opened =
                new Entry(new Stamp(1, morning, actor.account(), actor.roles(), origin), report(job, truth, actor));
        Entry sealed = new Entry(
                new Stamp(2, morning, Stamp.SERVER, Set.of(), origin.ofServerFor(actor.account())),
                new Remarked(
                        1, null, "What is true of this device is sealed until the debrief: " + truth.commitment(salt)));
        append(job, List.of(opened, sealed), HashChain.START);
        return job;
    }

    private static Opened report(int job, Truth truth, Actor actor) {
        return new Opened(
                PracticeJob.number(job).toString(),
                truth.report(),
                truth.words(),
                Category.valueOf(truth.family().trade()),
                truth.device(),
                "the practice bench",
                0,
                Priority.Impact.ONE_PERSON,
                Priority.Urgency.HINDERED,
                actor.account(),
                actor.roles());
    }

    private Policy policy() {
        return site.rules().policy();
    }

    /** What a form of the sheet asks for. */
    @Transactional
    Outcome write(int number, int version, Work.Order order, Actor actor) {
        PracticeJob job = open(number, version, actor);
        PracticeWriting writing = writing(job, job.played(), job.played());
        List<Missing> missing = writing.typed(order.on(writing.sheet()), actor);
        return written(job, writing, missing, actor);
    }

    /** Something done with the device, or waited for. What the method refuses is not done. */
    @Transactional
    Outcome act(int number, int version, String id, Actor actor) {
        PracticeJob job = open(number, version, actor);
        JobSheet sheet = job.sheet();
        Deed deed = Deed.of(job.truth().family(), id);
        Played after = deed.on(job.played());
        PracticeWriting writing = writing(job, job.played(), after);
        List<Missing> missing = List.of();
        if (deed.act() != null) {
            Answer answer = after.steps().get(after.steps().size() - 1).answer();
            Fact fact = DeviceFacts.of(job.truth().family(), deed.act(), answer, diagnoses.category(sheet));
            missing = writing.record(fact, actor);
        }
        if (missing.isEmpty()) {
            did(job, id);
        }
        if (after.isOver() && missing.isEmpty()) {
            store.end(number, PracticeJob.State.OVER, clock.instant());
        }
        return written(job, writing, missing, actor);
    }

    /** What the invented mentor answers to what waits for a second person; it takes five minutes of waiting. */
    @Transactional
    Outcome mentor(int number, int version, Actor actor) {
        PracticeJob job = open(number, version, actor);
        PracticeWriting writing = writing(job, job.played(), Deed.MENTOR.on(job.played()));
        List<Missing> missing = writing.record(InventedMentor.answer(job.sheet(), job.played()), InventedMentor.ACTOR);
        if (missing.isEmpty()) {
            did(job, Deed.MENTOR.id());
        }
        return written(job, writing, missing, actor);
    }

    private void did(PracticeJob job, String deed) {
        JobSheet sheet = job.sheet();
        store.act(job.id(), job.done().size() + 1, new PracticeJob.Done(deed, sheet.entries(), sheet.step()));
    }

    /** Ends it; the debrief follows. */
    @Transactional
    void giveUp(int number, Actor actor) {
        PracticeJob job = own(number, actor);
        if (job.isOpen()) {
            store.end(number, PracticeJob.State.GIVEN_UP, clock.instant());
        }
    }

    private PracticeJob own(int number, Actor actor) {
        Permissions.require(Permission.WORK_TICKETS, actor);
        return store.locked(number, actor.account()).orElseThrow(() -> new NotFound("practice job " + number));
    }

    private PracticeJob open(int number, int version, Actor actor) {
        PracticeJob job = own(number, actor);
        if (!job.isOpen()) {
            throw new Invalid("form", "This practice job has ended: nothing more is done on it.");
        }
        if (version != job.trail().size()) {
            throw new Stale(job.trail().size());
        }
        return job;
    }

    private PracticeWriting writing(PracticeJob job, Played now, Played done) {
        Set<String> shown = Set.copyOf(Ties.of(job.truth().family()).findings().values());
        return new PracticeWriting(job.sheet(), now.clock().now(), done.clock().now(), shown, policy(), diagnoses);
    }

    private Outcome written(PracticeJob job, PracticeWriting writing, List<Missing> missing, Actor actor) {
        append(
                job.id(),
                writing.entries(),
                job.trail().get(job.trail().size() - 1).hash());
        if (!writing.sheet().course().isOpen()) {
            store.end(job.id(), PracticeJob.State.CLOSED, clock.instant());
        }
        boolean kept = writing.entries().size() > (missing.isEmpty() ? 0 : 1);
        return new Outcome(own(job.id(), actor), missing, kept);
    }

    private void append(int job, List<Entry> entries, String last) {
        Instant recorded = clock.instant();
        List<TrailEntry> chained = new ArrayList<>();
        String previous = last;
        for (Entry entry : entries) {
            TrailEntry next = trail.next(PracticeJob.number(job), entry, previous);
            chained.add(next);
            previous = next.hash();
        }
        store.append(job, chained, recorded);
    }
}
