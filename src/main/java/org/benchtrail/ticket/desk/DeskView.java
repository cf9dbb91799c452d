package org.benchtrail.ticket.desk;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.desk.Escalated;
import org.benchtrail.core.method.desk.Hold;
import org.benchtrail.core.method.desk.Waived;
import org.benchtrail.core.method.identify.HazardsScreened;
import org.benchtrail.platform.Option;
import org.benchtrail.ticket.EntryLine;
import org.benchtrail.ticket.Viewing;

/**
 * What stops or bends the course of a ticket.
 *
 * @param stopped whether a hazard stops the work
 * @param hazards as the latest screening found them
 * @param held for what and until when; empty if it is not on hold
 * @param escalated with whom; empty if it is not
 * @param takers who else may be handed the ticket
 * @param zone in which a follow-up is typed
 */
public record DeskView(
        boolean stopped,
        String hazards,
        String held,
        String escalated,
        List<EntryLine> waivers,
        List<Option> takers,
        String zone) {

    public static DeskView of(Viewing viewing, List<Actor> workers) {
        JobSheet sheet = viewing.sheet();
        return new DeskView(
                sheet.course().isOpen() && sheet.workStopped(),
                hazards(sheet),
                held(viewing),
                escalated(sheet),
                viewing.lines(sheet.all(Waived.class)),
                workers.stream()
                        .filter(w -> !w.account().equals(sheet.course().assignee()))
                        .map(w -> new Option(w.account(), w.name()))
                        .toList(),
                viewing.zone().getId());
    }

    private static String hazards(JobSheet sheet) {
        return sheet.latest(HazardsScreened.class)
                .map(n -> n.fact().present().entrySet().stream()
                        .filter(Map.Entry::getValue)
                        .map(e -> e.getKey().words())
                        .collect(Collectors.joining(", ")))
                .orElse("");
    }

    private static String held(Viewing viewing) {
        Hold hold = viewing.sheet().course().hold();
        return hold == null
                ? ""
                : "Waits for " + hold.waitingFor().words() + "; to be looked at again " + viewing.time(hold.followUp())
                        + (hold.note().isEmpty() ? "" : ". " + hold.note());
    }

    private static String escalated(JobSheet sheet) {
        Escalated escalation = sheet.course().escalation();
        return escalation == null ? "" : "With " + escalation.to() + ". Tried: " + escalation.tried();
    }
}
