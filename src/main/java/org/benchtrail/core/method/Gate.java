package org.benchtrail.core.method;

import java.util.ArrayList;
import java.util.List;

/** What must be true before a step is left: its own requirements, and those of safety that bite at every step. */
public final class Gate {
    private Gate() {}

    /**
     * Every requirement between the sheet and the move, with how it stands, in the order of the table.
     *
     * <p>Beyond the step's own: a hazard found later stops every later step too, and from a drive-failure finding on no step
     * is left without the data backed up.
     */
    public static List<Requirement.Status> of(Situation situation) {
        List<Requirement.Status> statuses = new ArrayList<>();
        JobSheet sheet = situation.sheet();
        if (sheet.step() != Step.IDENTIFY) {
            standing(situation).stream()
                    .map(r -> r.status(situation))
                    .filter(s -> s.state() != Requirement.State.MET)
                    .forEach(statuses::add);
        }
        Requirement.of(sheet.step()).forEach(r -> statuses.add(r.status(situation)));
        return statuses;
    }

    /** What still stands in the way; empty if the way is free. */
    public static List<Missing> missing(Situation situation) {
        return of(situation).stream()
                .filter(s -> s.state() == Requirement.State.MISSING)
                .map(Requirement.Status::missing)
                .toList();
    }

    private static List<Requirement> standing(Situation situation) {
        return situation.sheet().driveFailure().isPresent()
                ? List.of(Requirement.HAZARDS_SCREENED, Requirement.DATA_PROTECTED)
                : List.of(Requirement.HAZARDS_SCREENED);
    }
}
