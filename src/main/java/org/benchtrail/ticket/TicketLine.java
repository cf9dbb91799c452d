package org.benchtrail.ticket;

import java.time.Instant;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.site.Due;
import org.benchtrail.core.site.WorkingTime;
import org.jspecify.annotations.Nullable;

/**
 * One ticket as a line of a list.
 *
 * @param clockStopped whether the hold that it is on, if any, stops its clock until it is to be looked at again
 */
public record TicketLine(
        int serial,
        String title,
        Category category,
        String device,
        String place,
        Priority priority,
        Step step,
        Standing standing,
        int round,
        @Nullable String assignee,
        Instant opened,
        Instant due,
        Due.What dueWhat,
        @Nullable String holdFor,
        @Nullable Instant followUp,
        boolean clockStopped,
        boolean escalated,
        int version,
        Instant touched) {

    /** As it is written. */
    public String number() {
        return new TicketNumber(serial).toString();
    }

    /** What it waits for, or that it is escalated; empty if neither. */
    public String mark() {
        return holdFor != null ? "waits for " + holdFor : escalated ? "escalated" : "";
    }

    public boolean isOverdue(Instant now) {
        return standing == Standing.OPEN && due.isBefore(now);
    }

    /**
     * How far off the due time is, in the working time of the site, and what is due if it is not the fix. While the clock stands
     * still, what is left when it goes on.
     */
    public String dueIn(Instant now, WorkingTime time) {
        Instant goesOn = clockStopped && holdFor != null ? followUp : null;
        String distance = goesOn != null && goesOn.isAfter(now) && due.isAfter(goesOn)
                ? "clock stopped, " + Times.work(time.between(goesOn, due)) + " left"
                : Times.due(due, now, time);
        return dueWhat == Due.What.FIX ? distance : dueWhat.words() + " " + distance;
    }

    static TicketLine of(Ticket t) {
        return new TicketLine(
                t.serial,
                t.title,
                t.category,
                t.device,
                t.place,
                t.priority,
                t.step,
                t.standing,
                t.round,
                t.assignee,
                t.opened,
                t.due,
                t.dueWhat,
                t.holdFor,
                t.followUp,
                t.clockStopped,
                t.escalated,
                t.entries,
                t.touched);
    }
}
