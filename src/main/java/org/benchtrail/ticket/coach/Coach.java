package org.benchtrail.ticket.coach;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Requirement;
import org.benchtrail.core.method.Role;
import org.benchtrail.core.method.Sight;

/** Stands beside a trainee's own work, and beside nobody else's. */
@ApplicationScoped
public class Coach {
    private final CoachFile file;
    private final Coaching coaching;

    Coach(CoachFile file, Coaching coaching) {
        this.file = file;
        this.coaching = coaching;
    }

    /** @param gate what the step asks for, as the viewer is told it */
    public CoachView beside(JobSheet sheet, List<Requirement.Status> gate, Actor viewer) {
        boolean working = sheet.course().isOpen()
                && sheet.course().hold() == null
                && viewer.account().equals(sheet.course().assignee());
        if (!working || !viewer.is(Role.TRAINEE)) {
            return CoachView.NONE;
        }
        return CoachView.of(
                gate, coaching.shownTo(viewer), file.texts(), Sight.of(sheet, viewer) instanceof Sight.Veiled);
    }

    /** The same on a practice job, where nothing is veiled. */
    public CoachView besidePractice(JobSheet sheet, List<Requirement.Status> gate, Actor viewer) {
        return sheet.course().isOpen() && viewer.is(Role.TRAINEE)
                ? CoachView.of(gate, coaching.shownTo(viewer), file.texts(), false)
                : CoachView.NONE;
    }
}
