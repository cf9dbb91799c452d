package org.benchtrail.core.method;

import java.util.ArrayList;
import java.util.List;

/** What must be true before a step is left: its own requirements, and those of safety that bite at every step. */
public final class Gate {
    private Gate() {}

    /**
     * Every requirement between the sheet and the move, with how it stands, in the order of the table.
     *
     * <p>Beyond the step's own: those of earlier steps that bite later too, where they are not met.
     */
    public static List<Requirement.Status> of(Situation situation) {
        List<Requirement.Status> statuses = new ArrayList<>();
        JobSheet sheet = situation.sheet();
        Requirements.all().stream()
                .filter(r -> r.step().isBefore(sheet.step()) && r.bitesLater(sheet))
                .map(r -> r.status(situation))
                .filter(s -> s.state() != Requirement.State.MET)
                .forEach(statuses::add);
        Requirements.of(sheet.step()).forEach(r -> statuses.add(r.status(situation)));
        return statuses;
    }

    /** What still stands in the way; empty if the way is free. */
    public static List<Missing> missing(Situation situation) {
        return of(situation).stream()
                .filter(s -> s.state() == Requirement.State.MISSING)
                .map(Requirement.Status::missing)
                .toList();
    }
}
