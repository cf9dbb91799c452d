package org.benchtrail.knowledge;

import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.document.KnowledgeLinked;
import org.benchtrail.core.method.document.Lesson;
import org.benchtrail.ticket.TicketActs;

/** Tickets closed the honest way, for tests of what comes after. */
public final class ClosedTickets {
    private ClosedTickets() {}

    public static TicketNumber one(TicketActs acts, Actor by) {
        return new Jobs(acts)
                .close(
                        by,
                        new Jobs.Job(
                                "Oddlamp fails",
                                "Workstation",
                                "Oddlamp fails",
                                "Oddlamp worn",
                                "It was so",
                                "Cleaned it"),
                        new KnowledgeLinked(Lesson.NOTHING, "A common cause"));
    }

    /** One that goes through every gate and says nothing. */
    public static TicketNumber empty(TicketActs acts, Actor by) {
        return new Jobs(acts)
                .close(
                        by,
                        new Jobs.Job("Oddlamp fails", "Workstation", "n-a", "n-a", "n-a", "n-a"),
                        new KnowledgeLinked(Lesson.NOTHING, "n-a"));
    }
}
