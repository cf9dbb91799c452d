package org.benchtrail.ticket.entry;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.ZoneId;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.people.Directory;
import org.benchtrail.platform.NotFound;
import org.benchtrail.ticket.ForecastFirst;
import org.benchtrail.ticket.TicketQueries;
import org.benchtrail.trail.TrailEntry;

/** The trail of a ticket as its pages show it, each read in one transaction. */
@ApplicationScoped
@Transactional
class EntryQueries {
    private final TicketQueries tickets;
    private final Directory people;

    EntryQueries(TicketQueries tickets, Directory people) {
        this.tickets = tickets;
        this.people = people;
    }

    TrailView trail(TicketNumber number, Actor viewer, ZoneId zone) {
        TicketQueries.Verified verified = tickets.verified(number, viewer);
        return TrailView.of(number, verified, zone, people.names(persons(verified.trail())));
    }

    private static Set<String> persons(List<TrailEntry> trail) {
        return trail.stream()
                .flatMap(e -> e.readable().stream())
                .map(e -> e.stamp().person())
                .collect(Collectors.toSet());
    }

    /**
     * @throws NotFound if there is no such entry
     * @throws ForecastFirst if it may not be read yet
     */
    EntryView entry(TicketNumber number, int entry, Actor viewer, ZoneId zone) {
        TicketQueries.Traced traced = tickets.traced(number, viewer);
        TrailEntry stored = traced.trail().stream()
                .filter(e -> e.entry() == entry)
                .findFirst()
                .orElseThrow(() -> new NotFound("entry " + entry + " on ticket " + number));
        if (stored.isVeiled()) {
            throw new ForecastFirst(number);
        }
        return EntryView.of(traced.ticket(), stored, viewer, zone, people.names(persons(traced.trail())));
    }
}
