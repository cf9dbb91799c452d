package org.benchtrail.exports;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.OutputStream;
import java.time.Clock;
import java.time.Instant;
import java.time.YearMonth;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.LongFunction;
import java.util.stream.Collectors;
import org.benchtrail.core.figures.MoveKinds;
import org.benchtrail.core.figures.Whereabouts;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.Directory;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Moments;
import org.benchtrail.seal.LeafProofs;
import org.benchtrail.site.SiteBook;
import org.jspecify.annotations.Nullable;

/**
 * The event log of a month: every ticket that ended in it, once, with its whole trail. It is read a stretch at a time, each in a
 * transaction of its own, so that a long file needs no more memory than a short one.
 */
@ApplicationScoped
class EventLog {
    static final int STRETCH = 100;
    private static final int LOOKED_BACK_MONTHS = 23;
    private static final int LISTED = 50;
    private static final ObjectMapper JSON = new ObjectMapper();

    private final EventRows rows;
    private final SiteBook site;
    private final LeafProofs proofs;
    private final Directory people;
    private final Clock clock;

    EventLog(EventRows rows, SiteBook site, LeafProofs proofs, Directory people, Clock clock) {
        this.rows = rows;
        this.site = site;
        this.proofs = proofs;
        this.people = people;
        this.clock = clock;
    }

    /**
     * What there is to export, and what was.
     *
     * @param months of the last two years in which tickets ended, by the site's calendar
     * @param given the latest first
     * @param leaves of the newest head of the log; 0 while there is none
     */
    public record Exports(List<EventRows.Month> months, List<Given> given, long leaves) {}

    /** A file that somebody was given, in words. */
    public record Given(String about, String format, String person, String when) {}

    Exports exports(Actor viewer, ZoneId shown) {
        Permissions.require(Permission.SEE_FIGURES, viewer);
        return QuarkusTransaction.requiringNew().call(() -> {
            ZoneId zone = site.zone();
            YearMonth first = YearMonth.from(clock.instant().atZone(zone)).minusMonths(LOOKED_BACK_MONTHS);
            return new Exports(
                    rows.months(first.atDay(1).atStartOfDay(zone).toInstant(), zone),
                    given(rows.given(LISTED), shown),
                    rows.leaves());
        });
    }

    private List<Given> given(List<EventRows.GivenRow> given, ZoneId shown) {
        Map<String, String> names = people.names(
                given.stream().map(EventRows.GivenRow::person).distinct().toList());
        return given.stream()
                .map(g -> new Given(
                        g.about(), g.format(), names.getOrDefault(g.person(), g.person()), Moments.text(g.at(), shown)))
                .toList();
    }

    /**
     * Notes that the viewer is given the month's events, before the first of them is sent.
     *
     * @return the newest head of the log; empty if there is none yet
     */
    String give(YearMonth month, String format, Actor viewer) {
        return QuarkusTransaction.requiringNew().call(() -> {
            String head = rows.head();
            rows.give(new EventRows.GivenRow(month.toString(), null, format, viewer.account(), clock.instant()), head);
            return head;
        });
    }

    /** Writes all tickets that ended in the month. */
    void write(YearMonth month, EventFormat format, EventFormat.About about, OutputStream file) throws IOException {
        ZoneId zone = QuarkusTransaction.requiringNew().call(site::zone);
        Instant begins = month.atDay(1).atStartOfDay(zone).toInstant();
        Instant ends = month.plusMonths(1).atDay(1).atStartOfDay(zone).toInstant();
        Map<String, String> persons = new HashMap<>();
        write(
                after -> QuarkusTransaction.requiringNew()
                        .call(() -> read(begins, ends, after, persons, proofs(format, about))),
                format,
                about,
                file);
    }

    /** Where tickets come from, a stretch at a time. */
    interface Stretches {
        /** The next ones after the ticket of a serial number; fewer than a stretch at the end. */
        List<TicketEvents> after(int serial);
    }

    /** Nothing of a stretch is held once it is written. */
    static void write(Stretches tickets, EventFormat format, EventFormat.About about, OutputStream file)
            throws IOException {
        format.begin(about, file);
        int after = 0;
        List<TicketEvents> stretch;
        do {
            stretch = tickets.after(after);
            for (TicketEvents ticket : stretch) {
                format.ticket(ticket, file);
                after = TicketNumber.parse(ticket.number()).serial();
            }
        } while (stretch.size() == STRETCH);
        format.end(file);
    }

    /** For a stretch, so that what is read of the log is forgotten after it. */
    private LongFunction<List<String>> proofs(EventFormat format, EventFormat.About about) {
        return format.proves() && !about.head().isEmpty() ? proofs.of(about.head())::path : leaf -> List.of();
    }

    private List<TicketEvents> read(
            Instant begins, Instant ends, int after, Map<String, String> persons, LongFunction<List<String>> proven) {
        List<Integer> tickets = rows.tickets(begins, ends, after, STRETCH);
        if (tickets.isEmpty()) {
            return List.of();
        }
        Map<Integer, List<EventRows.EntryRow>> entries =
                rows.entries(tickets).stream().collect(Collectors.groupingBy(EventRows.EntryRow::serial));
        return tickets.stream()
                .map(t -> ticket(entries.getOrDefault(t, List.of()), persons, proven))
                .toList();
    }

    static TicketEvents ticket(
            List<EventRows.EntryRow> trail, Map<String, String> persons, LongFunction<List<String>> proven) {
        EventRows.EntryRow first = trail.get(0);
        List<TicketEvent> events = new ArrayList<>();
        Whereabouts now = Whereabouts.OPENED;
        for (EventRows.EntryRow row : trail) {
            String person = persons.computeIfAbsent(row.actor(), a -> "person-" + (persons.size() + 1));
            events.add(new TicketEvent(
                    row.entry(),
                    row.at(),
                    row.kind(),
                    person,
                    roles(row.canonical()),
                    now,
                    row.hash(),
                    row.leaf(),
                    row.leaf() == null ? List.of() : proven.apply(row.leaf())));
            now = MoveKinds.move(row.kind()).map(now::after).orElse(now);
        }
        return new TicketEvents(
                new TicketNumber(first.serial()).toString(),
                first.category().toLowerCase(Locale.ROOT),
                first.priority().toLowerCase(Locale.ROOT),
                first.round(),
                events);
    }

    /** Of the entry, in words that no person chose; none where it cannot be read. */
    private static List<String> roles(byte @Nullable [] canonical) {
        List<String> roles = new ArrayList<>();
        try {
            JsonNode entry = JSON.readTree(canonical == null ? new byte[0] : canonical);
            entry.path("roles").forEach(r -> roles.add(r.asText().toLowerCase(Locale.ROOT)));
        } catch (IOException unreadable) {
            // an entry that was tampered with is told as it stands, without its roles
            roles.clear();
        }
        return roles;
    }
}
