package org.benchtrail.ticket.desk;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Caution;
import org.benchtrail.core.method.GuardedAct;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Missing;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.desk.CautionsAcknowledged;
import org.benchtrail.core.method.desk.Escalated;
import org.benchtrail.core.method.desk.Hold;
import org.benchtrail.core.method.desk.Waived;
import org.benchtrail.core.method.identify.Hazard;
import org.benchtrail.core.method.identify.StopWorkCleared;
import org.benchtrail.platform.Option;
import org.benchtrail.ticket.EntryLine;
import org.benchtrail.ticket.PresenceNote;
import org.benchtrail.ticket.Viewing;
import org.jspecify.annotations.Nullable;

/**
 * What stops or bends the course of a ticket.
 *
 * @param stopped whether a hazard stops the work
 * @param hazards found and not cleared
 * @param notCleared why the viewer does not clear them; empty if the viewer may
 * @param liveTaken whether the caution against live measurements was acknowledged in this round
 * @param present what a trainee is told of a mentor's presence while something is measured live; null where none is needed
 * @param held for what and until when; empty if it is not on hold
 * @param escalated with whom; empty if it is not
 * @param clockBehind what to know of a clock that is behind the last entry; empty if it is not
 * @param takers who else may be handed the ticket
 * @param zone in which a follow-up is typed
 */
public record DeskView(
        boolean stopped,
        List<Hazard> hazards,
        String notCleared,
        boolean liveTaken,
        @Nullable PresenceNote present,
        String held,
        String escalated,
        String clockBehind,
        List<EntryLine> waivers,
        List<Option> takers,
        String zone) {

    /** Servers' clocks differ by less than this. */
    private static final Duration AGREES = Duration.ofMinutes(1);

    public static DeskView of(Viewing viewing, List<Actor> workers) {
        JobSheet sheet = viewing.sheet();
        return new DeskView(
                sheet.course().isOpen() && sheet.workStopped(),
                List.copyOf(sheet.hazards()),
                StopWorkCleared.withheldFrom(viewing.viewer(), sheet).stream()
                        .map(Missing::sentence)
                        .collect(Collectors.joining()),
                sheet.ofRound(CautionsAcknowledged.class).stream()
                        .anyMatch(a -> a.fact().cautions().contains(Caution.LIVE)),
                PresenceNote.of(viewing, GuardedAct.NO_CHECK, Set.of(Caution.LIVE)),
                held(viewing),
                escalated(sheet),
                clockBehind(viewing),
                viewing.lines(sheet.all(Waived.class)),
                workers.stream()
                        .filter(w -> !w.account().equals(sheet.course().assignee()))
                        .map(w -> new Option(w.account(), w.name()))
                        .toList(),
                viewing.zone().getId());
    }

    private static String clockBehind(Viewing viewing) {
        List<? extends StandingFact<?>> facts = viewing.sheet().facts();
        Instant last = facts.get(facts.size() - 1).stamp().at();
        Duration behind = Duration.between(viewing.now(), last);
        return behind.compareTo(AGREES) <= 0
                ? ""
                : "The last entry is of " + viewing.time(last) + ", and by the server's clock it is "
                        + viewing.time(viewing.now())
                        + ". What is recorded before the clock has caught up gets the time of that entry: tell an administrator.";
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
