package org.benchtrail.ticket.today;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.site.WorkingTime;
import org.benchtrail.site.SiteBook;
import org.benchtrail.ticket.QueueFilter;
import org.benchtrail.ticket.QueuePart;
import org.benchtrail.ticket.TicketLine;
import org.benchtrail.ticket.TicketListQueries;
import org.benchtrail.ticket.Times;
import org.benchtrail.ticket.alarm.AlarmActs;
import org.jspecify.annotations.Nullable;

/** What the first page shows, read in one transaction. */
@ApplicationScoped
@Transactional
class TodayQueries {
    private static final int NEXT = 10;
    private static final int HELD = 50;

    private final TicketListQueries lists;
    private final AlarmActs alarms;
    private final SiteBook site;
    private final Clock clock;

    TodayQueries(TicketListQueries lists, AlarmActs alarms, SiteBook site, Clock clock) {
        this.lists = lists;
        this.alarms = alarms;
        this.site = site;
        this.clock = clock;
    }

    TodayView today(Actor viewer, ZoneId zone) {
        Instant now = clock.instant();
        WorkingTime time = site.history().workingTime();
        QueuePart own = part(viewer.account(), null, NEXT, viewer);
        return new TodayView(
                viewer.name(),
                Times.text(now, zone),
                alarms.standing(viewer),
                lists.waiting(viewer).stream()
                        .map(w -> TodayView.Waiting.of(w, viewer))
                        .toList(),
                part(viewer.account(), true, HELD, viewer).tickets().stream()
                        .filter(t -> isToBeSeenAgain(t, now))
                        .map(t -> TodayView.Line.followUp(t, now, zone))
                        .toList(),
                own.tickets().stream()
                        .map(t -> TodayView.Line.due(t, now, zone, time))
                        .toList(),
                own.counted(),
                part("-", null, 1, viewer).counted());
    }

    private QueuePart part(String assignee, @Nullable Boolean held, int size, Actor viewer) {
        return lists.queue(
                QueueFilter.of(Standing.OPEN).assignee(assignee).held(held).lines(size), viewer);
    }

    private static boolean isToBeSeenAgain(TicketLine ticket, Instant now) {
        Instant followUp = ticket.followUp();
        return followUp != null && !followUp.isAfter(now);
    }
}
