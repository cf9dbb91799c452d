package org.benchtrail.ticket.today;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Instance;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.desk.WaitKind;
import org.benchtrail.core.site.SiteHistory;
import org.benchtrail.core.site.WorkingTime;
import org.benchtrail.people.Absences;
import org.benchtrail.people.Directory;
import org.benchtrail.people.Duty;
import org.benchtrail.site.SiteBook;
import org.benchtrail.ticket.QueueFilter;
import org.benchtrail.ticket.QueuePart;
import org.benchtrail.ticket.TicketListQueries;
import org.benchtrail.ticket.TicketQueries;
import org.benchtrail.ticket.Times;
import org.benchtrail.ticket.Viewing;

/** What the first page shows, read in one transaction. */
@ApplicationScoped
@Transactional
class TodayQueries {
    private static final int NEXT = 10;
    private static final int WAITS = 50;

    /** The trails of so many tickets are read, so that their evidence stands on the page. */
    private static final int WHOLE = 12;

    private final WaitBook waits;
    private final TicketListQueries lists;
    private final TicketQueries tickets;
    private final Directory people;
    private final Absences absences;
    private final SiteBook site;
    private final Clock clock;
    private final Instance<Duty> duties;

    TodayQueries(
            WaitBook waits,
            TicketListQueries lists,
            TicketQueries tickets,
            Directory people,
            Absences absences,
            SiteBook site,
            Clock clock,
            Instance<Duty> duties) {
        this.waits = waits;
        this.lists = lists;
        this.tickets = tickets;
        this.people = people;
        this.absences = absences;
        this.site = site;
        this.clock = clock;
        this.duties = duties;
    }

    TodayView today(Actor viewer, ZoneId zone) {
        Instant now = clock.instant();
        SiteHistory decided = site.history();
        WorkingTime time = decided.workingTime();
        QueuePart own = part(viewer.account(), NEXT, viewer);
        List<WaitingLine> waiting = waits.waiting(viewer, WAITS);
        List<WaitingLine> asked = waits.asked(viewer, WAITS);
        Map<TicketNumber, JobSheet> sheets = tickets.sound(shownWhole(waiting), viewer);
        Telling telling = new Telling(viewer, zone, now, decided, sheets, names(waiting, asked, sheets));
        return new TodayView(
                viewer.account(),
                Times.text(now, zone),
                zone.getId(),
                waiting.size() < WAITS ? waiting.size() : waits.count(viewer),
                duties.stream()
                        .map(duty -> duty.of(viewer))
                        .flatMap(Optional::stream)
                        .toList(),
                telling.groups(waiting),
                asked.stream().map(telling::asked).toList(),
                standIns(viewer, now),
                own.tickets().stream()
                        .map(t -> TodayView.Line.of(t, now, zone, time))
                        .toList(),
                own.counted(),
                part("-", 1, viewer).counted());
    }

    private List<TodayView.StandIn> standIns(Actor viewer, Instant now) {
        List<String> away = absences.standsInOf(viewer.account(), now);
        Map<String, String> names = away.isEmpty() ? Map.of() : people.names(away);
        return away.stream()
                .map(account -> new TodayView.StandIn(
                        account,
                        names.getOrDefault(account, account),
                        part(account, 1, viewer).counted()))
                .toList();
    }

    private QueuePart part(String assignee, int size, Actor viewer) {
        return lists.queue(QueueFilter.of(Standing.OPEN).assignee(assignee).lines(size), viewer);
    }

    /** The tickets that the page comes to first. */
    private static Set<TicketNumber> shownWhole(List<WaitingLine> waiting) {
        return Arrays.stream(WaitKind.values())
                .flatMap(kind -> waiting.stream().filter(line -> line.kind() == kind))
                .map(WaitingLine::number)
                .distinct()
                .limit(WHOLE)
                .collect(Collectors.toSet());
    }

    private Map<String, String> names(
            List<WaitingLine> waiting, List<WaitingLine> asked, Map<TicketNumber, JobSheet> sheets) {
        Set<String> accounts = new HashSet<>();
        Stream.concat(waiting.stream(), asked.stream()).forEach(line -> {
            accounts.add(line.asker());
            Optional.ofNullable(line.account()).ifPresent(accounts::add);
        });
        sheets.values().forEach(sheet -> accounts.addAll(Viewing.accounts(sheet)));
        return people.names(accounts);
    }

    /** How what waits is told to the viewer. */
    private final class Telling {
        private final Actor viewer;
        private final ZoneId zone;
        private final Instant now;
        private final SiteHistory decided;
        private final Map<TicketNumber, JobSheet> sheets;
        private final Map<String, String> names;

        Telling(
                Actor viewer,
                ZoneId zone,
                Instant now,
                SiteHistory decided,
                Map<TicketNumber, JobSheet> sheets,
                Map<String, String> names) {
            this.viewer = viewer;
            this.zone = zone;
            this.now = now;
            this.decided = decided;
            this.sheets = sheets;
            this.names = names;
        }

        List<TodayView.Group> groups(List<WaitingLine> waiting) {
            return Arrays.stream(WaitKind.values())
                    .map(kind -> new TodayView.Group(
                            kind,
                            waiting.stream()
                                    .filter(line -> line.kind() == kind)
                                    .map(this::wait)
                                    .toList()))
                    .filter(group -> !group.waits().isEmpty())
                    .toList();
        }

        private WaitView wait(WaitingLine line) {
            JobSheet sheet = sheets.get(line.number());
            return sheet == null
                    ? WaitView.named(line, viewer.account(), login -> names.getOrDefault(login, login), now, zone)
                    : WaitView.whole(
                            line,
                            new Viewing(
                                    sheet,
                                    viewer,
                                    zone,
                                    now,
                                    decided.at(now).rules().policy(),
                                    decided.workingTime(),
                                    names));
        }

        TodayView.Asked asked(WaitingLine line) {
            return new TodayView.Asked(
                    line.number().toString(),
                    line.title(),
                    line.kind().words(),
                    "since " + Times.text(line.since(), zone));
        }
    }
}
