package org.benchtrail.core.site;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.benchtrail.core.method.Course;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Priority;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.desk.Hold;
import org.benchtrail.core.method.desk.MoveFact;
import org.benchtrail.core.method.desk.Reopened;
import org.benchtrail.core.method.desk.WaitingFor;

/**
 * What the due time of a ticket is counted from.
 *
 * @param start when it was opened, or last reopened
 * @param answered whether somebody has it, or had it since
 * @param holds since then, in order
 */
public record TicketClock(Instant start, Priority priority, boolean answered, List<OnHold> holds) {
    public TicketClock {
        holds = List.copyOf(holds);
    }

    /**
     * A hold.
     *
     * @param to when work was resumed, or was to be looked at again if that was earlier: nobody stops a clock by forgetting
     */
    public record OnHold(WaitingFor waitingFor, Instant from, Instant to) {}

    public static TicketClock of(JobSheet sheet) {
        return new Reading(sheet).clock;
    }

    /** When it is due by what the site decided: the times by what was in force at the start, each hold at its own. */
    public Due due(SiteHistory site) {
        Target target = site.at(start).rules().target(priority);
        boolean toAnswer = !answered && target.response() < target.fix();
        List<Span> stops = holds.stream()
                .filter(h -> stops(h, site))
                .map(h -> new Span(h.from(), h.to()))
                .toList();
        Instant at =
                site.workingTime().after(start, Duration.ofMinutes(toAnswer ? target.response() : target.fix()), stops);
        return new Due(at, toAnswer ? Due.What.ANSWER : Due.What.FIX);
    }

    private static boolean stops(OnHold hold, SiteHistory site) {
        return site.at(hold.from()).rules().stops().contains(hold.waitingFor());
    }

    /** Whether the clock stands still in the last hold, by what was in force when it began; false without holds. */
    public boolean lastHoldStops(SiteHistory site) {
        return !holds.isEmpty() && stops(holds.get(holds.size() - 1), site);
    }

    /** The moves of a job sheet, one by one. */
    private static final class Reading {
        private final List<OnHold> holds = new ArrayList<>();
        private final TicketClock clock;
        private Instant start;
        private Instant heldAt;
        private boolean answered;

        Reading(JobSheet sheet) {
            StandingFact<?> first = sheet.facts().get(0);
            start = first.stamp().at();
            heldAt = start;
            Course course = Course.opened(sheet.opened(), first.stamp());
            answered = course.assignee() != null;
            for (StandingFact<?> fact : sheet.facts()) {
                if (fact.fact() instanceof MoveFact move) {
                    Course next = move.after(course, fact.stamp());
                    note(course, next, fact.stamp().at(), move instanceof Reopened);
                    course = next;
                }
            }
            Hold open = course.hold();
            if (open != null) {
                holds.add(new OnHold(open.waitingFor(), heldAt, open.followUp()));
            }
            clock = new TicketClock(start, sheet.opened().priority(), answered, holds);
        }

        private void note(Course before, Course after, Instant at, boolean reopened) {
            Hold ended = before.hold();
            if (ended != null && after.hold() == null) {
                holds.add(new OnHold(ended.waitingFor(), heldAt, Span.earlier(ended.followUp(), at)));
            } else if (ended == null && after.hold() != null) {
                heldAt = at;
            }
            answered |= after.assignee() != null;
            if (reopened) {
                start = at;
                holds.clear();
                answered = after.assignee() != null;
            }
        }
    }
}
