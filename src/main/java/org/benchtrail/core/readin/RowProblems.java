package org.benchtrail.core.readin;

import java.util.ArrayList;
import java.util.List;
import org.benchtrail.core.Invalid;

/** The problems of many rows: the first twenty, then how many more. */
final class RowProblems {
    private static final int MOST = 20;

    private final List<Invalid.Problem> told = new ArrayList<>();
    private int more;

    /** Does it, and keeps what is refused. */
    void keep(Runnable part) {
        try {
            part.run();
        } catch (Invalid e) {
            e.problems().forEach(this::add);
        }
    }

    private void add(Invalid.Problem problem) {
        if (told.size() < MOST) {
            told.add(problem);
        } else {
            more++;
        }
    }

    /** @throws Invalid if anything was refused */
    void throwIfAny() {
        if (more > 0) {
            told.add(new Invalid.Problem("text", "And " + more + " more that cannot be taken."));
        }
        if (!told.isEmpty()) {
            throw new Invalid(told);
        }
    }
}
