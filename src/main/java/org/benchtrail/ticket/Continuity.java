package org.benchtrail.ticket;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.integrity.Hole;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Entry;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.platform.nodes.Nodes;
import org.benchtrail.site.SiteBook;
import org.benchtrail.trail.Alarms;
import org.benchtrail.trail.StoredTrail;
import org.benchtrail.trail.TrailEntry;
import org.benchtrail.trail.TrailStore;
import org.benchtrail.trail.Verification;
import org.jspecify.annotations.Nullable;

/**
 * Whether what is stored of a ticket holds together: asked before every act, and whenever a sheet is read. What does not hold
 * raises an alarm in the running transaction, and no act mends it.
 */
@ApplicationScoped
class Continuity {
    private final TrailStore trail;
    private final Alarms alarms;
    private final SiteBook site;
    private final Nodes nodes;

    Continuity(TrailStore trail, Alarms alarms, SiteBook site, Nodes nodes) {
        this.nodes = nodes;
        this.trail = trail;
        this.alarms = alarms;
        this.site = site;
    }

    /** The trail as it is stored, held against itself and against what the row says of its end. */
    SheetRecord read(TicketNumber number, Actor by) {
        return alarming(
                number,
                by,
                read(number, trail.read(number), StoredTrail::verify).marked());
    }

    /** As {@link #read(TicketNumber, Actor)}, of those tickets that there are, in one statement. */
    List<SheetRecord> read(Collection<TicketNumber> numbers, Actor by) {
        return trail.read(numbers).entrySet().stream()
                .map(stored -> alarming(
                        stored.getKey(),
                        by,
                        read(stored.getKey(), stored.getValue(), StoredTrail::verify)
                                .marked()))
                .toList();
    }

    /** How a trail is held against itself. */
    private interface Verifying {
        Verification verify(StoredTrail stored, TicketNumber number, Consumer<Entry> holding);
    }

    private SheetRecord read(TicketNumber number, StoredTrail stored, Verifying how) {
        List<Entry> holding = new ArrayList<>();
        Verification chain = how.verify(stored, number, holding::add);
        if (chain.newer() && nodes.isLaterSeen()) {
            return SheetRecord.newer(number, stored, chain);
        }
        JobSheet sheet = replayed(
                chain.holds() ? holding.stream() : stored.entries().stream().map(TrailEntry::read), stored.holes());
        return new SheetRecord(number, stored, sheet, chain.holds() && sheet == null ? untold(stored) : chain);
    }

    /**
     * As {@link #read}, and the whole row held against the sheet as well.
     *
     * @param row locked by the running transaction, so that nobody changes it between the two looks
     */
    SheetRecord read(Ticket row, Actor by) {
        return against(row, read(row.number(), trail.read(row.number()), StoredTrail::verify), by);
    }

    /** As {@link #read(Ticket, Actor)}, of many rows that the running transaction sees as they were in one moment. */
    List<SheetRecord> readAll(Collection<Ticket> rows, Actor by) {
        Map<TicketNumber, Ticket> byNumber = rows.stream().collect(Collectors.toMap(Ticket::number, row -> row));
        List<SheetRecord> read = trail.read(byNumber.keySet()).entrySet().parallelStream()
                .map(stored -> read(stored.getKey(), stored.getValue(), StoredTrail::verifyOnce))
                .toList();
        return read.stream()
                .map(found -> against(Objects.requireNonNull(byNumber.get(found.number())), found, by))
                .toList();
    }

    private SheetRecord against(Ticket row, SheetRecord found, Actor by) {
        boolean alike = found.sheet() == null || row.shows(found.sheet(), site.history());
        SheetRecord all = alike || !found.verification().holds() ? found : found.with(unlike(found.stored()));
        return alarming(row.number(), by, all.marked());
    }

    /** What was found wrong beside the trail, such as a file that was altered. */
    SheetRecord alarming(TicketNumber number, Actor by, SheetRecord found) {
        if (!found.verification().holds() && !found.newer()) {
            alarms.found(
                    number,
                    false,
                    found.verification().sentence(),
                    found.stored().ends(),
                    by.account());
        }
        return found;
    }

    private static @Nullable JobSheet replayed(Stream<Entry> entries, List<Hole> holes) {
        try {
            return JobSheet.replay(entries.toList(), holes);
        } catch (RuntimeException whateverItHolds) {
            return null;
        }
    }

    private static Verification untold(StoredTrail stored) {
        return new Verification(
                stored.entries().size(), false, null, "Each entry holds, but together they tell no ticket.");
    }

    private static Verification unlike(StoredTrail stored) {
        return new Verification(
                stored.entries().size(),
                false,
                null,
                "The trail holds, but the ticket's row says something else than it.");
    }
}
