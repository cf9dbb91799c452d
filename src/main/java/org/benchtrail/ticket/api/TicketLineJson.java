package org.benchtrail.ticket.api;

import java.time.Instant;
import java.util.List;
import org.benchtrail.core.method.Category;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.site.Due;
import org.benchtrail.ticket.TicketLine;
import org.jspecify.annotations.Nullable;

/** One ticket in a list. */
public record TicketLineJson(
        String number,
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
        boolean escalated,
        int version,
        Instant touched) {

    static List<TicketLineJson> all(List<TicketLine> lines) {
        return lines.stream().map(TicketLineJson::of).toList();
    }

    private static TicketLineJson of(TicketLine t) {
        return new TicketLineJson(
                t.number(),
                t.title(),
                t.category(),
                t.device(),
                t.place(),
                t.priority(),
                t.step(),
                t.standing(),
                t.round(),
                t.assignee(),
                t.opened(),
                t.due(),
                t.dueWhat(),
                t.holdFor(),
                t.followUp(),
                t.escalated(),
                t.version(),
                t.touched());
    }
}
