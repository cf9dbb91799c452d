package org.benchtrail.audit;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.benchtrail.core.audit.AuditAct.Item;
import org.benchtrail.core.audit.AuditLot;
import org.benchtrail.core.audit.Independence;
import org.benchtrail.core.audit.ReviewSheet;
import org.benchtrail.core.audit.Stratum;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Policy;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.site.SiteBook;
import org.benchtrail.ticket.TicketQueries;
import org.benchtrail.trail.StoredTrail;
import org.benchtrail.trail.TrailEntry;
import org.benchtrail.trail.TrailStore;
import org.jspecify.annotations.Nullable;

/** Tickets as an audit sees them: as they were when they ended, and who had a part in them until now. */
@ApplicationScoped
@Transactional
class AuditedTickets {
    private static final int AT_ONCE = 200;

    private final LotRows rows;
    private final TicketQueries tickets;
    private final TrailStore trails;
    private final SiteBook site;

    AuditedTickets(LotRows rows, TicketQueries tickets, TrailStore trails, SiteBook site) {
        this.rows = rows;
        this.tickets = tickets;
        this.trails = trails;
        this.site = site;
    }

    /** Looks at each ticket on the way, as it was when it ended. */
    interface Look {
        void at(String ticket, JobSheet sheet, List<Entry> trail);
    }

    /** What ended in a period as items of a lot, by number. */
    List<Item> items(List<LotRows.Ended> ended) {
        return items(ended, (ticket, sheet, trail) -> {});
    }

    /** As {@link #items(List)}, with a look at each; one whose record does not hold is not looked at. */
    List<Item> items(List<LotRows.Ended> ended, Look look) {
        List<Item> items = new ArrayList<>();
        for (int from = 0; from < ended.size(); from += AT_ONCE) {
            List<LotRows.Ended> some = ended.subList(from, Math.min(ended.size(), from + AT_ONCE));
            Map<TicketNumber, StoredTrail> stored = trails.read(
                    some.stream().map(e -> new TicketNumber(e.ticket())).toList());
            some.parallelStream().map(one -> Told.of(one, stored)).toList().forEach(told -> {
                if (told.sheet != null) {
                    look.at(told.item.ticket(), told.sheet, told.entries);
                }
                items.add(told.item);
            });
        }
        return items;
    }

    /** @param sheet null of a record that does not hold */
    private record Told(Item item, @Nullable JobSheet sheet, List<Entry> entries) {
        private static Told of(LotRows.Ended one, Map<TicketNumber, StoredTrail> stored) {
            TicketNumber number = new TicketNumber(one.ticket());
            StoredTrail trail = stored.get(number);
            List<Entry> holding = new ArrayList<>();
            boolean holds = trail != null && trail.verify(number, holding::add).holds();
            List<Entry> entries = holds
                    ? holding.stream()
                            .filter(entry -> entry.stamp().entry() <= one.entry())
                            .toList()
                    : List.of();
            JobSheet sheet = trail != null && holds ? JobSheet.replay(entries, trail.holes()) : null;
            Stratum stratum = sheet == null ? Stratum.INCIDENT : Stratum.of(sheet, one.incident());
            return new Told(new Item(number.toString(), one.entry(), one.hash(), stratum), sheet, entries);
        }
    }

    /** A ticket up to the entry with which it ended. */
    record Frozen(TicketQueries.Traced traced, Policy policy, boolean wentOn) {
        JobSheet sheet() {
            return traced.ticket().sheet();
        }

        ReviewSheet review() {
            return ReviewSheet.of(sheet(), policy);
        }
    }

    Frozen frozen(Item item, Actor by) {
        TicketQueries.Traced now = tickets.traced(TicketNumber.parse(item.ticket()), by);
        List<TrailEntry> trail = now.trail().stream()
                .filter(entry -> entry.entry() <= item.entry())
                .toList();
        JobSheet sheet = JobSheet.replay(
                trail.stream().map(TrailEntry::read).toList(),
                now.ticket().sheet().holes());
        TicketQueries.Whole whole = now.ticket();
        return new Frozen(
                new TicketQueries.Traced(
                        new TicketQueries.Whole(
                                whole.number(), whole.line(), sheet, whole.fault(), "the requester", "not shown"),
                        trail),
                site.history().at(trail.get(trail.size() - 1).at()).rules().policy(),
                now.ticket().sheet().entries() > item.entry());
    }

    /** Why that person does not review the ticket, by all that is known of it now. */
    List<String> reasons(AuditLot lot, String ticket, Actor person) {
        TicketNumber number = TicketNumber.parse(ticket);
        TicketQueries.Traced now = tickets.traced(number, person);
        return Independence.reasons(
                new Independence.Person(person.account(), person.name()),
                now.ticket().sheet(),
                now.trail().stream().map(TrailEntry::read).toList(),
                lot.frozenAt(),
                new Independence.Beside(now.ticket().requester(), rows.acceptedBy(number)));
    }

    /** Who is asked about the work: the assignee when it ended, or whoever did it last. */
    String hand(Item item, Actor by) {
        JobSheet sheet = frozen(item, by).sheet();
        String assignee = sheet.course().assignee();
        Set<String> hands = sheet.hands();
        return assignee != null ? assignee : hands.stream().sorted().findFirst().orElse(by.account());
    }
}
