package org.benchtrail.audit;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.function.BiFunction;
import org.benchtrail.core.audit.AuditAct.Item;
import org.benchtrail.core.audit.AuditLot;
import org.benchtrail.core.audit.Independence;
import org.benchtrail.core.audit.LotSignals;
import org.benchtrail.core.audit.ReviewSheet;
import org.benchtrail.core.audit.SignalTrace;
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

    /** What ended in a period as items of a lot, by number. */
    List<Item> items(List<LotRows.Ended> ended) {
        return looked(ended, (item, seen) -> item);
    }

    /** As {@link #items(List)}; {@code signals} takes in all whose record holds. */
    List<Item> items(List<LotRows.Ended> ended, LotSignals signals) {
        record Traced(Item item, Optional<SignalTrace> trace) {}
        List<Traced> traced = looked(
                ended,
                (item, seen) -> new Traced(item, seen.map(as -> signals.trace(item.ticket(), as.sheet(), as.trail()))));
        traced.forEach(one -> one.trace().ifPresent(signals::add));
        return traced.stream().map(Traced::item).toList();
    }

    /** A ticket as it was when it ended. */
    private record Seen(JobSheet sheet, List<Entry> trail) {}

    /**
     * What comes out of a look at each ticket that ended, by number. While some are looked at, on another thread and in any order,
     * the next ones are read.
     *
     * @param look nothing is seen of a ticket whose record does not hold
     */
    private <T> List<T> looked(List<LotRows.Ended> ended, BiFunction<Item, Optional<Seen>, T> look) {
        List<T> all = new ArrayList<>();
        CompletableFuture<List<T>> before = CompletableFuture.completedFuture(List.of());
        for (int from = 0; from < ended.size(); from += AT_ONCE) {
            List<LotRows.Ended> some = ended.subList(from, Math.min(ended.size(), from + AT_ONCE));
            Map<TicketNumber, StoredTrail> stored = trails.read(
                    some.stream().map(e -> new TicketNumber(e.ticket())).toList());
            all.addAll(before.join());
            before = CompletableFuture.supplyAsync(() -> some.parallelStream()
                    .map(one -> looked(one, stored.get(new TicketNumber(one.ticket())), look))
                    .toList());
        }
        all.addAll(before.join());
        return all;
    }

    private static <T> T looked(
            LotRows.Ended one, @Nullable StoredTrail stored, BiFunction<Item, Optional<Seen>, T> look) {
        TicketNumber number = new TicketNumber(one.ticket());
        Optional<Seen> seen = stored == null ? Optional.empty() : seen(number, one.entry(), stored);
        Stratum stratum = seen.map(as -> Stratum.of(as.sheet(), one.incident())).orElse(Stratum.INCIDENT);
        return look.apply(new Item(number.toString(), one.entry(), one.hash(), stratum), seen);
    }

    private static Optional<Seen> seen(TicketNumber number, int last, StoredTrail stored) {
        List<Entry> holding = new ArrayList<>();
        if (!stored.verifyOnce(number, holding::add).holds()) {
            return Optional.empty();
        }
        List<Entry> trail =
                holding.stream().filter(entry -> entry.stamp().entry() <= last).toList();
        return Optional.of(new Seen(JobSheet.replay(trail, stored.holes()), trail));
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
