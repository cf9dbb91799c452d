package org.benchtrail.ticket.coach;

import java.util.Map;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.training.CoachLevel;

/** How much each requirement is coached. */
public interface Coaching {
    /** What that trainee is shown of each requirement, by its code. */
    Map<String, CoachLevel> shownTo(Actor trainee);
}
