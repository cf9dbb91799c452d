package org.benchtrail.ticket.queue;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.benchtrail.core.Invalid.Problem;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.site.WorkingTime;
import org.benchtrail.people.Permission;
import org.benchtrail.people.Permissions;
import org.benchtrail.platform.Option;
import org.benchtrail.platform.form.FormValues;
import org.benchtrail.ticket.HandOvers;
import org.benchtrail.ticket.QueuePart;
import org.benchtrail.ticket.Sorting;
import org.benchtrail.ticket.TicketLine;
import org.benchtrail.ticket.Times;
import org.jspecify.annotations.Nullable;

/**
 * A page of the queue.
 *
 * @param alarms how many tickets do not hold; 0 for those whom it does not concern
 * @param total how many tickets the filter fits, in words
 * @param nextPage address of the page after; null on the last one
 * @param standing of these tickets, in words
 * @param open whether they are open, and so have a due time
 * @param handing whether the viewer may hand tickets over
 * @param people who may be chosen in the filter
 * @param takers who may be given tickets
 * @param saved filters that the viewer keeps
 * @param asked the filter as it was typed
 * @param fill what the fields of the page hold
 */
public record QueueView(
        List<Line> lines,
        int alarms,
        String total,
        @Nullable String nextPage,
        String standing,
        boolean open,
        boolean handing,
        List<Option> people,
        List<Option> takers,
        List<SavedFilters.Kept> saved,
        QueueAsked asked,
        FormValues fill,
        List<Problem> problems) {

    /**
     * A ticket in words.
     *
     * @param seen as the form that hands over names it
     * @param stepPlace 1 to 6
     * @param due how far off it is; of an ended ticket, its last act
     * @param mark what it waits for, or that it is escalated; empty if neither
     * @param beside its priority, or its last act where the list goes by that
     */
    public record Line(
            String number,
            String seen,
            String title,
            String device,
            String place,
            String step,
            int stepPlace,
            String assignee,
            String due,
            boolean overdue,
            String mark,
            String beside) {

        static Line of(
                TicketLine ticket,
                Map<String, String> names,
                Sorting sorting,
                Instant now,
                ZoneId zone,
                WorkingTime time) {
            boolean open = ticket.standing() == Standing.OPEN;
            String assignee = ticket.assignee();
            String touched = Times.text(ticket.touched(), zone);
            return new Line(
                    ticket.number(),
                    new HandOvers.Seen(new TicketNumber(ticket.serial()), ticket.version()).token(),
                    ticket.title(),
                    ticket.device(),
                    ticket.place(),
                    open ? ticket.step().title() : Option.words(ticket.standing()),
                    ticket.step().place(),
                    assignee == null ? "not assigned" : names.getOrDefault(assignee, assignee),
                    open ? ticket.dueIn(now, time) : touched,
                    ticket.isOverdue(now),
                    ticket.mark(),
                    open && sorting.by() == Sorting.Key.TOUCHED
                            ? "last act " + touched
                            : ticket.priority().words());
        }
    }

    static QueueView of(
            QueuePart part,
            List<Line> lines,
            int alarms,
            List<Actor> workers,
            List<SavedFilters.Kept> saved,
            QueueAsked asked,
            Actor viewer,
            FormValues fill,
            List<Problem> problems) {
        boolean open = asked.wanted() == Standing.OPEN;
        List<Option> takers =
                workers.stream().map(w -> new Option(w.account(), w.name())).toList();
        return new QueueView(
                lines,
                alarms,
                part.counted() > QueuePart.MOST_COUNTED
                        ? "more than " + QueuePart.MOST_COUNTED
                        : Long.toString(part.counted()),
                part.next() == null ? null : asked.next(part.next()),
                Option.words(asked.wanted()),
                open,
                open && Permissions.allow(Permission.WORK_TICKETS, viewer),
                people(takers, asked.who()),
                takers,
                saved,
                asked,
                fill,
                problems);
    }

    /** With whoever is asked for, even if their account is closed. */
    private static List<Option> people(List<Option> takers, String asked) {
        List<Option> people = new ArrayList<>(List.of(new Option("me", "me"), new Option("-", "not assigned")));
        people.addAll(takers);
        if (!asked.isEmpty() && people.stream().noneMatch(o -> o.value().equals(asked))) {
            people.add(new Option(asked, asked));
        }
        return people;
    }

    /** Whether more is chosen than what the filter shows at once. */
    public boolean further() {
        return !(asked.category() + asked.place() + asked.device() + asked.held() + asked.waits() + asked.standing())
                .isEmpty();
    }
}
