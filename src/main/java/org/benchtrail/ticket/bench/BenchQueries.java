package org.benchtrail.ticket.bench;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.List;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.plan.ActionPlanned;
import org.benchtrail.ticket.QueueFilter;
import org.benchtrail.ticket.TicketLine;
import org.benchtrail.ticket.TicketListQueries;
import org.benchtrail.ticket.TicketQueries;
import org.jspecify.annotations.Nullable;

/** Where a result of the bench may go. */
@ApplicationScoped
public class BenchQueries {
    private static final int MOST_OFFERED = 50;

    private final TicketQueries tickets;
    private final TicketListQueries lists;

    BenchQueries(TicketQueries tickets, TicketListQueries lists) {
        this.tickets = tickets;
        this.lists = lists;
    }

    /**
     * A place that a result may go to.
     *
     * @param part the part whose fit is checked; null if the result is evidence only
     */
    public record Place(
            TicketNumber ticket,
            String title,
            @Nullable Integer action,
            @Nullable String part) {
        /** As forms send it: the number, and the action after a slash. */
        public String value() {
            return action == null ? ticket.toString() : ticket + "/" + action;
        }
    }

    /** The viewer's open tickets, each with the planned parts that a part check could be about. */
    @Transactional
    public List<Place> places(boolean partCheck, Actor actor) {
        QueueFilter mine =
                QueueFilter.of(Standing.OPEN).assignee(actor.account()).lines(MOST_OFFERED);
        List<Place> places = new ArrayList<>();
        for (TicketLine line : lists.queue(mine, actor).tickets()) {
            TicketNumber number = TicketNumber.parse(line.number());
            if (partCheck && line.step() == Step.PLAN) {
                parts(tickets.ticket(number, actor).sheet())
                        .forEach(a -> places.add(new Place(
                                number, line.title(), a.entry(), a.fact().part())));
            }
            places.add(new Place(number, line.title(), null, null));
        }
        return places;
    }

    /** Planned parts that are not settled. */
    static List<StandingFact<ActionPlanned>> parts(JobSheet sheet) {
        return sheet.actions().stream()
                .filter(a ->
                        a.fact().part() != null && sheet.settlement(a.entry()).isEmpty())
                .toList();
    }
}
