package org.benchtrail.ticket;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.integrity.Hole;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.BothRoles;
import org.benchtrail.core.text.PlainText;
import org.benchtrail.people.Directory;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.site.SiteBook;
import org.benchtrail.trail.Alarms;
import org.benchtrail.trail.BrokenTrail;
import org.benchtrail.trail.Mendings;
import org.benchtrail.trail.Mendings.Outcome;
import org.benchtrail.trail.Mendings.Proposal;
import org.benchtrail.trail.Mendings.Way;
import org.benchtrail.trail.StoredTrail;
import org.benchtrail.trail.TrailEntry;
import org.benchtrail.trail.TrailStore;
import org.jspecify.annotations.Nullable;

/**
 * A ticket whose trail was found broken: it is marked, and stays shut until an administrator and a supervisor agree how it goes on. One
 * proposes, the other agrees; whatever changes at the ticket in between ends the proposal.
 */
@ApplicationScoped
@Transactional
public class TicketMending {
    /** In bytes; a trail of a few thousand entries with its proofs. */
    static final int LARGEST = 8_000_000;

    private static final int LONGEST = 500;

    private final Tickets tickets;
    private final Continuity continuity;
    private final TrailStore trail;
    private final Mendings mendings;
    private final Alarms alarms;
    private final Directory people;
    private final SiteBook site;
    private final Clock clock;
    private final Event<TicketChanged> changed;

    TicketMending(
            Tickets tickets,
            Continuity continuity,
            TrailStore trail,
            Mendings mendings,
            Alarms alarms,
            Directory people,
            SiteBook site,
            Clock clock,
            Event<TicketChanged> changed) {
        this.tickets = tickets;
        this.continuity = continuity;
        this.trail = trail;
        this.mendings = mendings;
        this.alarms = alarms;
        this.people = people;
        this.site = site;
        this.clock = clock;
        this.changed = changed;
    }

    /**
     * How a ticket stands.
     *
     * @param fault what does not hold; empty if nothing is to be mended
     * @param first the first entry that is lost; one after {@code last} if none is
     * @param last where the trail has to end
     * @param stuck why neither way is open; empty if one is
     * @param proposals the newest first
     */
    public record Standing(
            String number,
            String title,
            String fault,
            int first,
            int last,
            String stuck,
            List<Hole> holes,
            List<Proposal> proposals) {}

    /** What somebody proposes. */
    public record Wanted(@Nullable Way way, String reason) {}

    public Standing look(TicketNumber number, Actor by) {
        Permissions.require(Permission.MEND_TRAILS, by);
        Found found = found(number, by);
        return new Standing(
                number.toString(),
                found.row.title,
                found.record.fault(),
                found.repair.first(),
                found.repair.end().place(),
                found.stuck(),
                found.record.stored().holes(),
                mendings.of(number));
    }

    /** The ticket, locked, and what is to be done about it. */
    private record Found(Ticket row, SheetRecord record, BrokenTrail repair) {
        StoredTrail stored() {
            return record.stored();
        }

        /** What is lost; by which incident it is mended is told only then. */
        Hole hole() {
            return new Hole(repair.first(), repair.end().place(), repair.end().hash(), 0);
        }

        String stuck() {
            return repair.isLonger()
                    ? "There are entries after entry " + repair.end().place()
                            + ", where the trail has to end. Nothing here takes an entry away: whoever owns the database has to, and"
                            + " writes down why."
                    : "";
        }
    }

    private Found found(TicketNumber number, Actor by) {
        Ticket row = tickets.locked(number);
        SheetRecord record = continuity.read(row, by);
        BrokenTrail.End before =
                row.broken == null ? null : mendings.expected(row.broken).orElse(null);
        return new Found(row, record, trail.repair(number, record.stored(), before));
    }

    /** Marks a ticket whose record does not hold, and says so among the incidents; once, however often somebody tries. */
    void note(Ticket row, SheetRecord record, String act, Actor by) {
        if (record.fault().isEmpty() || record.newer() || row.broken != null) {
            return;
        }
        StoredTrail stored = record.stored();
        TicketNumber number = row.number();
        BrokenTrail repair = trail.repair(number, stored, null);
        row.broken = mendings.found(
                number,
                stored,
                repair.end(),
                stored.check(number),
                record.verification().sentence(),
                act,
                by.account(),
                clock.instant());
    }

    /**
     * Proposes how a ticket is mended.
     *
     * @param file what is put back is taken from it; empty where all was put back already, or nothing is
     * @throws Invalid if there is nothing to mend, it cannot be mended so, or something is proposed already
     */
    public void propose(TicketNumber number, Wanted wanted, byte[] file, Actor by) {
        Permissions.require(Permission.MEND_TRAILS, by);
        Found found = found(number, by);
        String reason = PlainText.line(wanted.reason());
        new Invalid.Collector()
                .require(!found.record.fault().isEmpty() && !found.record.newer(), "way", "There is nothing to mend.")
                .require(found.stuck().isEmpty(), "way", found.stuck())
                .require(
                        mendings.waiting(number).isEmpty(),
                        "way",
                        "Something is proposed already: agree to it, or withdraw it.")
                .require(wanted.way() != null, "way", "Choose how it is mended.")
                .require(PlainText.isText(reason), "reason", PlainText.WHAT_TO_DO)
                .require(
                        !reason.isEmpty() && reason.length() <= LONGEST,
                        "reason",
                        "Say what happened, in at most " + LONGEST + " characters.")
                .require(
                        file.length <= LARGEST, "file", "A file of a trail has at most " + LARGEST / 1_000_000 + " MB.")
                .throwIfAny();
        note(found.row, found.record, "mending proposed", by);
        Way way = wanted.way() == null ? Way.GO_ON : wanted.way();
        require(found, way, file);
        mendings.propose(
                number,
                way,
                reason,
                found.repair,
                found.stored().fingerprint(),
                way == Way.PUT_BACK ? file : null,
                clock.instant(),
                by.account(),
                having(Role.ADMINISTRATOR),
                having(Role.SUPERVISOR));
    }

    private List<String> having(Role role) {
        return people.allowed(Permission.MEND_TRAILS).stream()
                .filter(actor -> actor.is(role))
                .map(Actor::account)
                .toList();
    }

    private static void require(Found found, Way way, byte[] file) {
        if (way == Way.PUT_BACK) {
            whole(found, file);
        } else {
            goneOn(found);
        }
    }

    private static BrokenTrail.Whole whole(Found found, byte[] file) {
        try {
            return found.repair.putBack(file);
        } catch (BrokenTrail.Lacking e) {
            throw new Invalid("file", String.valueOf(e.getMessage()));
        }
    }

    /** What is left of the ticket if it goes on after the hole. */
    private static JobSheet goneOn(Found found) {
        BrokenTrail repair = found.repair;
        new Invalid.Collector()
                .require(
                        repair.first() > 1, "way", "The entry that opened the ticket is lost: it can only be put back.")
                .require(
                        repair.first() <= repair.end().place(),
                        "way",
                        "No entry is lost, so there is no hole: choose to put back, without a file.")
                .throwIfAny();
        Hole hole = found.hole();
        return JobSheet.replay(
                found.stored().entries().stream()
                        .filter(entry -> entry.entry() < hole.first())
                        .map(TrailEntry::read)
                        .toList(),
                Stream.concat(found.stored().holes().stream(), Stream.of(hole)).toList());
    }

    /**
     * Agrees to what another person proposed: the ticket is mended, unless anything was changed at it since.
     *
     * @throws Invalid if nothing waits, or the two are no administrator and supervisor
     */
    public Outcome agree(TicketNumber number, long id, Actor by) {
        Permissions.require(Permission.MEND_TRAILS, by);
        Found found = found(number, by);
        Proposal proposal = waiting(number, id);
        String refusal =
                BothRoles.refusal(now(proposal.by()), then(proposal, proposal.by()), by, then(proposal, by.account()));
        new Invalid.Collector().require(refusal.isEmpty(), "way", refusal).throwIfAny();
        boolean same = !found.record.fault().isEmpty()
                && proposal.state().equals(found.stored().fingerprint())
                && proposal.hash().equals(found.repair.end().hash())
                && proposal.last() == found.repair.end().place()
                && proposal.first() == found.repair.first();
        Outcome outcome = same ? Outcome.AGREED : Outcome.LAPSED;
        mendings.end(proposal, outcome, by.account(), clock.instant());
        if (same) {
            mend(found, proposal, by);
        }
        return outcome;
    }

    /** Whoever may mend takes back what waits, so that another way can be proposed. */
    public void withdraw(TicketNumber number, long id, Actor by) {
        Permissions.require(Permission.MEND_TRAILS, by);
        tickets.locked(number);
        mendings.end(waiting(number, id), Outcome.WITHDRAWN, by.account(), clock.instant());
    }

    private Proposal waiting(TicketNumber number, long id) {
        return mendings.waiting(number)
                .filter(proposal -> proposal.id() == id)
                .orElseThrow(
                        () -> new Invalid("way", "This proposal does not wait any more: look at the ticket again."));
    }

    private Actor now(String account) {
        return people.allowed(Permission.MEND_TRAILS).stream()
                .filter(actor -> actor.account().equals(account))
                .findFirst()
                .orElse(new Actor(account, account, Set.of()));
    }

    private static Set<Role> then(Proposal proposal, String account) {
        Set<Role> roles = EnumSet.noneOf(Role.class);
        if (Arrays.asList(proposal.administrators().split(" ")).contains(account)) {
            roles.add(Role.ADMINISTRATOR);
        }
        if (Arrays.asList(proposal.supervisors().split(" ")).contains(account)) {
            roles.add(Role.SUPERVISOR);
        }
        return roles;
    }

    private void mend(Found found, Proposal proposal, Actor by) {
        TicketNumber number = found.row.number();
        trail.holdSealing();
        JobSheet sheet;
        if (proposal.way() == Way.GO_ON) {
            sheet = goneOn(found);
            renew(found, sheet);
            trail.leave(number, found.hole());
        } else {
            byte[] file = proposal.file();
            BrokenTrail.Whole whole = whole(found, file == null ? new byte[0] : file);
            sheet = JobSheet.replay(
                    whole.entries().stream().map(TrailEntry::read).toList(),
                    found.stored().holes());
            renew(found, sheet);
            trail.putBack(number, whole.written());
            continuity.read(found.row, by).sound();
        }
        changed.fire(new TicketChanged(number, sheet, List.of()));
        alarms.found(number, true, "Mended: " + proposal.way().words() + ".", "", by.account());
    }

    /** The row first: by it the database knows where the trail has to end. */
    private void renew(Found found, JobSheet sheet) {
        found.row.show(sheet, found.repair.end().hash(), site.history());
        found.row.broken = null;
        tickets.flush();
    }
}
