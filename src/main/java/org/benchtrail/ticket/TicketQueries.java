package org.benchtrail.ticket;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.List;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.trail.TrailEntry;
import org.benchtrail.trail.TrailStore;
import org.benchtrail.trail.Verification;

/** What can be read of one ticket. Each query is one transaction, so that what belongs together fits together. */
@ApplicationScoped
@Transactional
public class TicketQueries {
    private final Tickets tickets;
    private final Requesters requesters;
    private final TrailStore trail;

    TicketQueries(Tickets tickets, Requesters requesters, TrailStore trail) {
        this.tickets = tickets;
        this.requesters = requesters;
        this.trail = trail;
    }

    /** A ticket: its sheet, and what stands outside the trail. */
    public record Whole(TicketNumber number, TicketLine line, JobSheet sheet, String requester, String contact) {}

    public Whole ticket(TicketNumber number, Actor actor) {
        return traced(number, actor).ticket();
    }

    /** A ticket and the trail that it was replayed from. */
    public record Traced(Whole ticket, List<TrailEntry> trail) {}

    public Traced traced(TicketNumber number, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        Ticket row = tickets.present(number);
        List<TrailEntry> entries = trail.read(number);
        Requester requester = requesters.findById(row.requester);
        return new Traced(
                new Whole(number, TicketLine.of(row), sheet(entries), requester.name, requester.contact), entries);
    }

    public List<TrailEntry> trail(TicketNumber number, Actor actor) {
        Permissions.require(Permission.SEE_TICKETS, actor);
        tickets.present(number);
        return trail.read(number);
    }

    /** A trail, and whether it holds. */
    public record Verified(TicketLine line, List<TrailEntry> trail, Verification verification) {}

    /** Holds the trail against itself, and the ticket's row against a replay of it. */
    public Verified verified(TicketNumber number, Actor actor) {
        Permissions.require(Permission.VERIFY_TRAIL, actor);
        Ticket row = tickets.present(number);
        List<TrailEntry> entries = trail.read(number);
        Verification chain = Verification.of(number, entries, row.entries);
        return new Verified(
                TicketLine.of(row), entries, chain.holds() && !shows(row, entries) ? unlike(entries) : chain);
    }

    private static Verification unlike(List<TrailEntry> entries) {
        return new Verification(
                entries.size(), false, null, "The trail holds, but the ticket's row says something else than it.");
    }

    private static boolean shows(Ticket row, List<TrailEntry> entries) {
        try {
            return row.shows(sheet(entries));
        } catch (IllegalArgumentException e) {
            return false; // each entry holds, but together they tell no ticket
        }
    }

    private static JobSheet sheet(List<TrailEntry> entries) {
        return JobSheet.replay(entries.stream().map(TrailEntry::read).toList());
    }
}
