package org.benchtrail.ticket.today;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.benchtrail.core.method.desk.WaitKind;
import org.benchtrail.core.site.WorkingTime;
import org.benchtrail.people.Duty;
import org.benchtrail.ticket.TicketLine;
import org.benchtrail.ticket.Times;

/**
 * What a person finds when a shift begins.
 *
 * @param viewer account
 * @param now as the person reads it
 * @param zone in which the person types times
 * @param count how many things on tickets wait for the person
 * @param duties what else waits for the person
 * @param groups what waits on tickets, by its kind; the longest waiting first
 * @param asked what the person asked of others and waits for
 * @param standIns those who are away and for whom the person stands in
 * @param next own tickets, the first due first
 * @param own how many open tickets the person has in all
 * @param unassigned how many open tickets nobody has
 */
public record TodayView(
        String viewer,
        String now,
        String zone,
        long count,
        List<Duty.Line> duties,
        List<Group> groups,
        List<Asked> asked,
        List<StandIn> standIns,
        List<Line> next,
        long own,
        long unassigned) {

    /** Waits of one kind; at least one. */
    public record Group(WaitKind kind, List<WaitView> waits) {}

    /** @param tickets how many open tickets that person has */
    public record StandIn(String account, String name, long tickets) {}

    /** @param what was asked for, in words */
    public record Asked(String number, String title, String what, String when) {}

    /**
     * An own ticket.
     *
     * @param distance how far off the moment is at which it is due
     * @param mark what it waits for, or that it is escalated; empty if neither
     */
    public record Line(
            String number,
            String title,
            String device,
            String place,
            String step,
            int stepPlace,
            String due,
            String distance,
            boolean overdue,
            String mark) {

        static Line of(TicketLine ticket, Instant now, ZoneId zone, WorkingTime time) {
            return new Line(
                    ticket.number(),
                    ticket.title(),
                    ticket.device(),
                    ticket.place(),
                    ticket.step().title(),
                    ticket.step().place(),
                    Times.text(ticket.due(), zone),
                    ticket.dueIn(now, time),
                    ticket.isOverdue(now),
                    ticket.mark());
        }
    }

    /** How many waits are not on the page. */
    public long more() {
        return count - groups.stream().mapToLong(group -> group.waits().size()).sum();
    }
}
