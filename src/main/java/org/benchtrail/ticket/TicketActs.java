package org.benchtrail.ticket;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.integrity.HashChain;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Decision;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.FactKinds;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Method;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.Origin;
import org.benchtrail.core.method.OwnWords;
import org.benchtrail.core.method.Policy;
import org.benchtrail.core.method.Sight;
import org.benchtrail.core.method.Stamp;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.MentorPresent;
import org.benchtrail.core.method.desk.MoveFact;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.desk.Refused;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.identify.IdentifyRequirement;
import org.benchtrail.core.method.identify.LikenessChecked;
import org.benchtrail.core.site.SiteHistory;
import org.benchtrail.people.AccountLog;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.RecordBroken;
import org.benchtrail.platform.Stale;
import org.benchtrail.site.DeviceBook;
import org.benchtrail.site.DeviceView;
import org.benchtrail.site.SiteBook;
import org.benchtrail.trail.TrailEntry;
import org.benchtrail.trail.TrailStore;

/**
 * The one way in which anything happens to a ticket: lock it, ask the method, append to the trail, renew the row. The kinds
 * of act are the facts of {@code core.method}, grouped there by step.
 */
@ApplicationScoped
public class TicketActs {
    private static final String LIKENESS = IdentifyRequirement.LIKENESS_CHECKED.code();
    private static final Duration SAME_REFUSAL = Duration.ofMinutes(1);

    private final Tickets tickets;
    private final Requesters requesters;
    private final TrailStore trail;
    private final Continuity continuity;
    private final AccountLog accounts;
    private final Clock clock;
    private final SiteBook site;
    private final Completions completions;
    private final DeviceBook devices;
    private final Diagnoses diagnoses;
    private final Resemblance resemblance;
    private final Origins origins;
    private final OutsideJudges outside;
    private final TicketMending mending;
    private final Event<TicketChanged> changed;

    TicketActs(
            Tickets tickets,
            Requesters requesters,
            TrailStore trail,
            Continuity continuity,
            AccountLog accounts,
            Clock clock,
            SiteBook site,
            Completions completions,
            DeviceBook devices,
            Diagnoses diagnoses,
            Resemblance resemblance,
            Origins origins,
            OutsideJudges outside,
            TicketMending mending,
            Event<TicketChanged> changed) {
        this.tickets = tickets;
        this.requesters = requesters;
        this.trail = trail;
        this.continuity = continuity;
        this.accounts = accounts;
        this.clock = clock;
        this.site = site;
        this.completions = completions;
        this.devices = devices;
        this.diagnoses = diagnoses;
        this.resemblance = resemblance;
        this.origins = origins;
        this.outside = outside;
        this.mending = mending;
        this.changed = changed;
    }

    /** Opens a ticket; the requester's words become its first symptom's. */
    @Transactional
    public Outcome open(NewTicket report, Actor actor) {
        Permissions.require(Permission.WORK_TICKETS, actor);
        report.check();
        SiteHistory decided = site.kept();
        long requester = requesters.keep(report.requester(), report.contact());
        TicketNumber number = new TicketNumber(tickets.nextSerial());
        Opened opened = new Opened(
                number.toString(),
                report.title(),
                report.words(),
                Objects.requireNonNull(report.category()),
                devices.known(report.device()).map(DeviceView::label).orElse(report.device()),
                report.place(),
                requester,
                Objects.requireNonNull(report.impact()),
                Objects.requireNonNull(report.urgency()),
                report.queued() ? null : actor.account(),
                report.queued() ? Set.of() : actor.roles());
        OwnWords.require(opened);
        Instant now = now(Instant.MIN);
        Origin origin = origins.ofNewRequest(decided.at(now).rules().policy());
        Entry first = new Entry(new Stamp(1, now, actor.account(), actor.roles(), origin), opened);
        JobSheet sheet = JobSheet.open(first);
        TrailEntry stored = trail.next(number, first, HashChain.START);
        tickets.persist(new Ticket(number, sheet, stored.hash(), decided));
        tickets.flush();
        trail.append(number, stored);
        changed.fire(new TicketChanged(number, sheet, List.of(first)));
        return new Outcome(number, sheet, List.of(1), List.of());
    }

    /**
     * Does the acts in their order, all or none. A refusal is itself an entry, and the only one.
     *
     * @param version number of the last entry that the actor has seen
     * @throws Stale if somebody else acted meanwhile; nothing is recorded
     * @throws Invalid if an act is malformed, or refers to what is not there; nothing is recorded
     * @throws RecordBroken if what is stored of the ticket does not hold; an alarm is recorded, and nothing on the ticket
     */
    @Transactional
    public Outcome perform(TicketNumber number, int version, List<? extends Act> acts, Actor actor) {
        return carryOut(number, version, sheet -> new Work(acts, null), actor);
    }

    /** As {@link #perform(TicketNumber, int, List, Actor)}, for what depends on the sheet: it is read once for all. */
    @Transactional
    public Outcome perform(TicketNumber number, int version, Work.Order order, Actor actor) {
        return carryOut(number, version, order, actor);
    }

    private Outcome carryOut(TicketNumber number, int version, Work.Order order, Actor actor) {
        Permissions.require(Permission.WORK_TICKETS, actor);
        SiteHistory decided = site.kept();
        Ticket row = tickets.locked(number);
        SheetRecord record = continuity.read(row, actor);
        mending.note(row, record, origins.asked(), actor);
        Writing writing = new Writing(record, actor, decided);
        if (version != writing.sheet.entries()) {
            throw new Stale(writing.sheet.entries());
        }
        Work work = order.on(writing.sheet);
        List<Missing> missing = writing.all(work.acts());
        if (missing.isEmpty() && work.move() != null) {
            missing = writing.move(work.move());
        }
        if (missing.isEmpty()) {
            missing = writing.all(work.after());
        }
        if (!writing.entries.isEmpty()) {
            row.show(writing.sheet, writing.append(), decided);
            changed.fire(new TicketChanged(number, writing.sheet, writing.entries));
        }
        return new Outcome(number, writing.sheet, writing.recorded(missing), missing);
    }

    /** With those who have reviewed it, which is only after it has ended once. */
    private JobSheet judged(TicketNumber number, JobSheet sheet) {
        boolean never = sheet.course().isOpen() && sheet.all(Reopened.class).isEmpty();
        return never ? sheet : sheet.judgedBy(outside.judges(number));
    }

    /** Never before the last entry, whatever the clock says. */
    private Instant now(Instant last) {
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        return now.isBefore(last) ? last : now;
    }

    /** One request at work: the sheet as it grows, and the entries that will be appended. */
    private final class Writing {
        private final TicketNumber number;
        private final Actor actor;
        private final Policy policy;
        private final Origin origin;
        private final String lastHash;
        private final JobSheet start;
        private final Instant startTime;
        private final List<Entry> entries = new ArrayList<>();
        private JobSheet sheet;

        Writing(SheetRecord record, Actor actor, SiteHistory decided) {
            this.actor = actor;
            policy = decided.at(clock.instant()).rules().policy();
            origin = origins.ofNewRequest(policy);
            number = record.number();
            start = judged(number, record.sound());
            sheet = start;
            List<TrailEntry> stored = record.stored().entries();
            lastHash = record.stored().lastHash();
            startTime = stored.get(stored.size() - 1).at();
        }

        /** Does every act, or takes all back and notes the refusal. */
        List<Missing> all(List<? extends Act> acts) {
            for (Act act : acts) {
                Fact fact = act.on(sheet).completedBy(completions.on(sheet, policy));
                rankBefore(fact);
                if (decideMeeting(fact) instanceof Decision.Refused refused) {
                    entries.clear();
                    sheet = start;
                    refuse(fact, refused);
                    return refused.missing();
                }
                add(fact);
            }
            return List.of();
        }

        /** What the ranking said when a theory was chosen is kept, so that the choice can be understood later. */
        private void rankBefore(Fact fact) {
            if (fact.restsOnRanking()) {
                diagnoses
                        .toRecord(sheet)
                        .filter(ranked -> decide(ranked) instanceof Decision.Allowed)
                        .ifPresent(this::add);
            }
        }

        List<Missing> move(MoveFact move) {
            if (decideMeeting(move) instanceof Decision.Refused refused) {
                refuse(move, refused);
                return refused.missing();
            }
            add(move);
            return List.of();
        }

        /** As {@link #decide}, once the server has met what is met by itself. */
        private Decision decideMeeting(Fact fact) {
            Decision decision = decide(fact);
            Fact nothing = new LikenessChecked(List.of());
            boolean asked = decision instanceof Decision.Refused refused
                    && refused.missing().stream().anyMatch(m -> m.code().equals(LIKENESS));
            if (!asked || !resemblance.isNothing(number, sheet, actor) || decide(nothing) instanceof Decision.Refused) {
                return decision;
            }
            add(nothing, true);
            return decide(fact);
        }

        private Decision decide(Fact fact) {
            OwnWords.require(fact);
            List<Missing> veiled = Sight.refusal(sheet, fact, actor);
            if (!veiled.isEmpty()) {
                return new Decision.Refused(veiled, false);
            }
            Decision decision = method(fact);
            return decision instanceof Decision.Refused refused
                    ? new Decision.Refused(
                            refused.missing().stream()
                                    .map(m -> Sight.told(m, sheet, actor))
                                    .toList(),
                            refused.person())
                    : decision;
        }

        private Decision method(Fact fact) {
            Instant now = now(lastTime());
            Decision decision = Method.decide(sheet, fact, actor, policy, now, origin.request());
            if (decision instanceof Decision.Refused) {
                return decision;
            }
            List<Missing> alone = MentorPresent.lacking(sheet, fact, actor, now);
            return alone.isEmpty() ? decision : new Decision.Refused(alone, false);
        }

        /**
         * Because of who asks: in the record of accounts, where it moves no version. Else on the ticket, once a minute for the
         * same.
         */
        private void refuse(Fact fact, Decision.Refused why) {
            String act = FactKinds.name(fact.getClass());
            List<String> codes = why.missing().stream().map(Missing::code).toList();
            Refused refused = new Refused(act, codes);
            if (why.person()) {
                accounts.note(
                        actor.account(),
                        "refused",
                        actor.account(),
                        number + ", " + act + ": " + String.join(", ", codes));
            } else if (!isRepeated(refused)) {
                add(refused);
            }
        }

        private boolean isRepeated(Refused refused) {
            return sheet.latest(Fact.class)
                    .filter(last -> last.fact().equals(refused)
                            && last.stamp().person().equals(actor.account())
                            && Duration.between(last.stamp().at(), now(lastTime()))
                                            .compareTo(SAME_REFUSAL)
                                    < 0)
                    .isPresent();
        }

        private void add(Fact fact) {
            add(fact, fact.saidByServer());
        }

        private void add(Fact fact, boolean byServer) {
            Entry entry = new Entry(stamp(byServer), fact);
            sheet = sheet.with(entry);
            entries.add(entry);
        }

        private Stamp stamp(boolean byServer) {
            int entry = sheet.entries() + 1;
            Instant now = now(lastTime());
            return byServer
                    ? new Stamp(entry, now, Stamp.SERVER, Set.of(), origin.ofServerFor(actor.account()))
                    : new Stamp(entry, now, actor.account(), actor.roles(), origin);
        }

        private Instant lastTime() {
            return entries.isEmpty()
                    ? startTime
                    : entries.get(entries.size() - 1).stamp().at();
        }

        /** Answers with the hash of the last entry. */
        String append() {
            String previous = lastHash;
            for (Entry entry : entries) {
                TrailEntry next = trail.next(number, entry, previous);
                trail.append(number, next);
                previous = next.hash();
            }
            return previous;
        }

        List<Integer> recorded(List<Missing> missing) {
            return entries.stream()
                    .filter(e -> missing.isEmpty()
                            || !(e.fact() instanceof Refused || e.stamp().by().equals(Stamp.SERVER)))
                    .map(e -> e.stamp().entry())
                    .toList();
        }
    }
}
