package org.benchtrail.ticket.queue;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.site.WorkingTime;
import org.benchtrail.platform.Option;
import org.benchtrail.ticket.QueuePart;
import org.benchtrail.ticket.TicketLine;
import org.benchtrail.ticket.Times;
import org.jspecify.annotations.Nullable;

/**
 * A page of the queue.
 *
 * @param alarms how many tickets do not hold; 0 for those whom it does not concern
 * @param total how many tickets the filter fits in all
 * @param nextPage address of the page after; null on the last one
 * @param standing of these tickets, in words
 * @param open whether they are open, and so have a due time
 * @param asked the filter as it was typed
 */
public record QueueView(
        List<Line> lines,
        int alarms,
        long total,
        @Nullable String nextPage,
        String standing,
        boolean open,
        List<Option> steps,
        List<Option> people,
        List<Option> standings,
        QueueAsked asked) {

    /**
     * A ticket in words.
     *
     * @param stepPlace 1 to 6
     * @param due how far off it is; of an ended ticket, its last act
     * @param mark what it waits for, or that it is escalated; empty if neither
     */
    public record Line(
            String number,
            String title,
            String device,
            String place,
            String step,
            int stepPlace,
            String assignee,
            String due,
            boolean overdue,
            String mark,
            String priority) {

        static Line of(TicketLine ticket, Map<String, String> names, Instant now, ZoneId zone, WorkingTime time) {
            boolean open = ticket.standing() == Standing.OPEN;
            String assignee = ticket.assignee();
            return new Line(
                    ticket.number(),
                    ticket.title(),
                    ticket.device(),
                    ticket.place(),
                    open ? ticket.step().title() : Option.words(ticket.standing()),
                    ticket.step().place(),
                    assignee == null ? "not assigned" : names.getOrDefault(assignee, assignee),
                    open ? ticket.dueIn(now, time) : Times.text(ticket.touched(), zone),
                    ticket.isOverdue(now),
                    ticket.mark(),
                    ticket.priority().words());
        }
    }

    static QueueView of(QueuePart part, List<Line> lines, int alarms, List<Actor> workers, QueueAsked asked) {
        return new QueueView(
                lines,
                alarms,
                part.total(),
                part.next() == null ? null : asked.next(part.next()),
                Option.words(asked.wanted()),
                asked.wanted() == Standing.OPEN,
                Option.of(Step.class),
                Stream.concat(
                                Stream.of(new Option("me", "me"), new Option("-", "not assigned")),
                                workers.stream().map(w -> new Option(w.account(), w.name())))
                        .toList(),
                Option.of(Standing.class),
                asked);
    }
}
