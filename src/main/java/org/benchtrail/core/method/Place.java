package org.benchtrail.core.method;

import java.util.List;
import org.benchtrail.core.method.identify.IdentifyRequirement;

/** Whether a fact belongs here and now, by the standing of the ticket and the order of the steps. */
final class Place {
    private Place() {}

    /** Nothing is added to a ticket that has ended; only reopening is left, and only to a closed one. */
    static List<Missing> standing(Course course, Fact fact) {
        return switch (course.standing()) {
            case OPEN -> List.of();
            case CLOSED ->
                fact.possibleWhenClosed()
                        ? List.of()
                        : Missing.rule("ticket-closed", "This ticket is closed: reopen it first.", "desk");
            case CANCELLED -> Missing.rule("ticket-cancelled", "This ticket was cancelled: open a new one.", "desk");
        };
    }

    /** While a hazard stands, only what answers it, shows it or passes the ticket on is recorded. */
    static List<Missing> stopped(Situation s, Fact fact) {
        return fact.possibleWhileStopped() || !s.sheet().workStopped()
                ? List.of()
                : List.of(IdentifyRequirement.HAZARDS_SCREENED.status(s).missing());
    }

    /** A fact of a later step waits; one of an earlier step is taken late, unless to make it again is to go round again. */
    static List<Missing> step(JobSheet sheet, Fact fact) {
        Step own = fact.step();
        Step now = sheet.step();
        if (own == null) {
            return List.of();
        }
        if (sheet.course().hold() != null && own != Step.IDENTIFY) {
            return Missing.rule("on-hold", "This ticket is on hold: resume it first.", "desk");
        }
        if (now.isBefore(own)) {
            return Missing.rule(
                    "step-not-reached",
                    "This belongs to " + own.title() + "; the ticket stands at " + now.title() + ".",
                    "step");
        }
        return own == now || fact.lateAllowed()
                ? List.of()
                : Missing.rule(
                        "step-left",
                        own.title() + " has been left: what belongs to it can be made again only in another round.",
                        "step");
    }
}
