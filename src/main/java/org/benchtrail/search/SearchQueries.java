package org.benchtrail.search;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.knowledge.KnowledgeSearch;
import org.benchtrail.knowledge.SearchResults;
import org.benchtrail.people.Directory;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.ticket.Sights;
import org.benchtrail.ticket.TicketLine;
import org.benchtrail.ticket.TicketListQueries;
import org.benchtrail.ticket.TicketSearch;

/** What the page of the search shows, read in one transaction. */
@ApplicationScoped
@Transactional
class SearchQueries {
    private static final int CAUSES = 5;

    private final TicketListQueries lists;
    private final TicketSearch search;
    private final KnowledgeSearch knowledge;
    private final Directory people;
    private final Sights sights;

    SearchQueries(
            TicketListQueries lists, TicketSearch search, KnowledgeSearch knowledge, Directory people, Sights sights) {
        this.sights = sights;
        this.lists = lists;
        this.search = search;
        this.knowledge = knowledge;
        this.people = people;
    }

    /** The ticket whose number is all that was typed, with its check digit or without. */
    Optional<TicketNumber> numbered(String typed, Actor viewer) {
        return lists.numbered(TicketNumber.meant(typed), viewer);
    }

    FoundView find(String typed, Actor viewer, ZoneId zone) {
        Permissions.require(Permission.SEE_TICKETS, viewer);
        if (typed.isEmpty()) {
            return FoundView.refused(typed, List.of());
        }
        TicketSearch.ByWords words = search.byWords(typed, viewer);
        List<TicketLine> reported =
                Permissions.allow(Permission.READ_REQUESTERS, viewer) ? search.byRequester(typed, viewer) : List.of();
        Map<String, String> names = people.names(Stream.concat(words.tickets().stream(), reported.stream())
                .map(TicketLine::assignee)
                .filter(Objects::nonNull)
                .collect(Collectors.toSet()));
        String forecast = sights.due("", viewer).map(TicketNumber::toString).orElse("");
        List<SearchResults.CauseHit> causes =
                forecast.isEmpty() ? knowledge.find(typed, null, 0, viewer).causes() : List.of();
        return new FoundView(
                typed,
                mended(typed, viewer),
                lines(words.tickets(), names, zone),
                words.spelling(),
                words.loose(),
                search.devices(typed, viewer).stream().map(FoundView.Device::of).toList(),
                lines(reported, names, zone),
                causes.subList(0, Math.min(causes.size(), CAUSES)),
                forecast,
                List.of());
    }

    private String mended(String typed, Actor viewer) {
        List<TicketNumber> meant = TicketNumber.mended(typed).stream().toList();
        return lists.numbered(meant, viewer).map(TicketNumber::toString).orElse("");
    }

    private static List<FoundView.Line> lines(List<TicketLine> tickets, Map<String, String> names, ZoneId zone) {
        return tickets.stream().map(t -> FoundView.Line.of(t, names, zone)).toList();
    }
}
