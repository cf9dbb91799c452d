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
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.desk.Remarked;
import org.benchtrail.core.method.document.Signatory;
import org.benchtrail.core.method.document.Signed;
import org.benchtrail.core.method.identify.StopWorkCleared;
import org.benchtrail.core.method.plan.PlanApproved;
import org.benchtrail.core.practice.job.Answer;
import org.benchtrail.core.practice.job.Family;
import org.benchtrail.core.practice.job.Truth;
import org.benchtrail.core.practice.job.Truth.Played;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.NotFound;
import org.benchtrail.platform.Stale;
import org.benchtrail.site.PolicyFingerprint;
import org.benchtrail.site.SiteBook;
import org.benchtrail.ticket.Diagnoses;
import org.benchtrail.ticket.Work;
import org.benchtrail.trail.TrailEntry;
import org.benchtrail.trail.TrailStore;

/** All that happens to practice jobs. They take their time from what is done, and nothing of them reaches a ticket. */
@ApplicationScoped
public class PracticeActs {
    /** Whoever approves and signs on practice jobs; no account has such a name. */
    static final Actor MENTOR =
            new Actor("invented mentor", "The invented mentor", Set.of(Role.MENTOR, Role.SUPERVISOR));

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
        byte[] seed = bytes();
        return begin(Truth.of(family, seed), actor);
    }

    @Transactional
    int begin(Truth truth, Actor actor) {
        Permissions.require(Permission.WORK_TICKETS, actor);
        Instant now = clock.instant();
        Instant morning =
                now.atZone(ZoneOffset.UTC).toLocalDate().atTime(MORNING).toInstant(ZoneOffset.UTC);
        byte[] salt = bytes();
        int job = store.begin(actor.account(), truth, salt, now, morning);
        Policy policy = policy();
        Origin origin = new Origin(Channel.PAGE, UUID.randomUUID().toString(), PolicyFingerprint.of(policy), null);
        Entry opened = new Entry(
                new Stamp(1, morning, actor.account(), actor.roles(), origin), report(job, truth.family(), actor));
        Entry sealed = new Entry(
                new Stamp(2, morning, Stamp.SERVER, Set.of(), origin.ofServerFor(actor.account())),
                new Remarked(
                        1, null, "What is true of this device is sealed until the debrief: " + truth.commitment(salt)));
        append(job, List.of(opened, sealed), HashChain.START);
        return job;
    }

    private byte[] bytes() {
        byte[] bytes = new byte[Commitment.SALT_BYTES];
        random.nextBytes(bytes);
        return bytes;
    }

    private static Opened report(int job, Family family, Actor actor) {
        return new Opened(
                PracticeJob.number(job).toString(),
                family.report(),
                family.words(),
                Category.valueOf(family.trade()),
                family.device(),
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
        PracticeWriting writing = writing(job, job.played());
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
        Tried tried = new Tried(writing(job, after), List.of());
        if (deed.act() != null) {
            Answer answer = after.steps().get(after.steps().size() - 1).answer();
            Fact fact = DeviceFacts.of(job.truth().family(), deed.act(), answer, diagnoses.category(sheet));
            tried = tried(job, after, fact, actor);
        }
        if (tried.missing().isEmpty()) {
            store.act(number, job.done().size() + 1, new PracticeJob.Done(id, sheet.entries(), sheet.step()));
        }
        if (after.isOver() && tried.missing().isEmpty()) {
            store.end(number, PracticeJob.State.OVER, clock.instant());
        }
        return written(job, tried.writing(), tried.missing(), actor);
    }

    private record Tried(PracticeWriting writing, List<Missing> missing) {}

    /** Records what takes time. What is refused was not done: it takes none, and its moment tells nothing of the device. */
    private Tried tried(PracticeJob job, Played after, Fact fact, Actor actor) {
        PracticeWriting before = writing(job, job.played());
        List<Missing> refused = before.record(fact, actor);
        if (!refused.isEmpty()) {
            return new Tried(before, refused);
        }
        PracticeWriting writing = writing(job, after);
        return new Tried(writing, writing.record(fact, actor));
    }

    /** The invented mentor approves, signs or clears what waits for a second person; it takes five minutes of waiting. */
    @Transactional
    Outcome mentor(int number, int version, Actor actor) {
        PracticeJob job = open(number, version, actor);
        JobSheet sheet = job.sheet();
        Tried tried = tried(job, Deed.MENTOR.on(job.played()), mentors(sheet), MENTOR);
        if (tried.missing().isEmpty()) {
            store.act(
                    number,
                    job.done().size() + 1,
                    new PracticeJob.Done(Deed.MENTOR.id(), sheet.entries(), sheet.step()));
        }
        return written(job, tried.writing(), tried.missing(), actor);
    }

    private static Fact mentors(JobSheet sheet) {
        if (sheet.workStopped()) {
            return new StopWorkCleared("Looked at by a second person.", true);
        }
        return switch (sheet.step()) {
            case PLAN ->
                new PlanApproved(
                        sheet.actions().stream().map(StandingFact::entry).toList(), "Looked at.");
            case DOCUMENT -> new Signed(Signatory.MENTOR);
            default -> throw new Invalid("form", "There is nothing here for a mentor to approve, sign or clear.");
        };
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

    private PracticeWriting writing(PracticeJob job, Played now) {
        return new PracticeWriting(job.sheet(), now.clock().now(), policy(), diagnoses);
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
        String previous = last;
        for (Entry entry : new ArrayList<>(entries)) {
            TrailEntry next = trail.next(PracticeJob.number(job), entry, previous);
            store.append(job, next, recorded);
            previous = next.hash();
        }
    }
}
