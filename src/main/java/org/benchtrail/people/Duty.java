package org.benchtrail.people;

import java.util.Optional;
import org.benchtrail.core.method.Actor;

/** Something besides the work on tickets that waits for some people; whoever implements it is asked when their day is shown. */
public interface Duty {
    /** Empty for those whom it does not concern, and where nothing waits. */
    Optional<Line> of(Actor actor);

    /**
     * What waits.
     *
     * @param title such as "Alarms"
     * @param count how many, at least 1
     * @param words what they are, after the count: "tickets do not hold together"
     * @param link where they are decided
     * @param act words of the link
     */
    record Line(String title, long count, String words, String link, String act) {}
}
