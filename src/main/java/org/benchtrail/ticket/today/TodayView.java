package org.benchtrail.ticket.today;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.site.WorkingTime;
import org.benchtrail.ticket.TicketLine;
import org.benchtrail.ticket.Times;
import org.benchtrail.ticket.WaitingLine;

/**
 * What a person finds when a shift begins.
 *
 * @param name whose day it is
 * @param now as the person reads it
 * @param alarms how many tickets do not hold; 0 for those whom it does not concern
 * @param waiting for the person's judgement or answer, the first due first
 * @param followUps own tickets on hold that are to be looked at again by now
 * @param next own tickets, the first due first
 * @param own how many open tickets the person has in all
 * @param unassigned how many open tickets nobody has
 */
public record TodayView(
        String name,
        String now,
        int alarms,
        List<Waiting> waiting,
        List<Line> followUps,
        List<Line> next,
        long own,
        long unassigned) {

    /** @param why what the person is waited for, in words */
    public record Waiting(String number, String title, String device, String place, String why) {
        static Waiting of(WaitingLine line, Actor viewer) {
            return new Waiting(line.number(), line.title(), line.device(), line.place(), line.why(viewer));
        }
    }

    /**
     * An own ticket.
     *
     * @param when when it is due, or was to be looked at again
     * @param distance how far off that is
     * @param mark what it waits for, or that it is escalated; empty if neither
     */
    public record Line(
            String number,
            String title,
            String device,
            String place,
            String step,
            int stepPlace,
            String when,
            String distance,
            boolean overdue,
            String mark) {

        static Line due(TicketLine ticket, Instant now, ZoneId zone, WorkingTime time) {
            return of(ticket, ticket.due(), ticket.dueIn(now, time), now, zone);
        }

        static Line followUp(TicketLine ticket, Instant now, ZoneId zone) {
            Instant when = ticket.followUp() == null ? ticket.due() : ticket.followUp();
            return of(ticket, when, Times.distance(when, now), now, zone);
        }

        private static Line of(TicketLine ticket, Instant when, String distance, Instant now, ZoneId zone) {
            return new Line(
                    ticket.number(),
                    ticket.title(),
                    ticket.device(),
                    ticket.place(),
                    ticket.step().title(),
                    ticket.step().place(),
                    Times.text(when, zone),
                    distance,
                    when.isBefore(now),
                    ticket.mark());
        }
    }

    /** How many things wait for the person. */
    public int count() {
        return waiting.size() + followUps.size() + (alarms > 0 ? 1 : 0);
    }
}
