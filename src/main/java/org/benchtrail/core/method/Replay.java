package org.benchtrail.core.method;

import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.MoveFact;
import org.benchtrail.core.method.desk.Opened;

/** A job sheet as it grows, entry by entry. */
final class Replay {
    private final FactIndex facts;
    private Course course;
    private int entries;

    Replay(FactIndex facts, Course course, int entries) {
        this.facts = facts;
        this.course = course;
        this.entries = entries;
    }

    Replay(Entry first) {
        if (first.stamp().entry() != 1 || !(first.fact() instanceof Opened opened)) {
            throw new IllegalArgumentException("a job sheet begins with entry 1, which opens the ticket");
        }
        facts = new FactIndex();
        course = Course.opened(opened, first.stamp());
        entries = 1;
        facts.add(new StandingFact<>(opened, first.stamp(), 1, Step.IDENTIFY, false, null));
    }

    void add(Entry entry) {
        Stamp stamp = entry.stamp();
        if (stamp.entry() != entries + 1) {
            throw new IllegalArgumentException("entry " + (entries + 1) + " is missing: found " + stamp.entry());
        }
        if (entry.fact() instanceof Corrected corrected) {
            correct(corrected, stamp);
        }
        boolean late = entry.fact().step() != null && entry.fact().step().isBefore(course.step());
        facts.add(new StandingFact<>(entry.fact(), stamp, course.round(), course.step(), late, null));
        if (entry.fact() instanceof MoveFact move) {
            course = move.after(course, stamp);
        }
        entries++;
    }

    private void correct(Corrected corrected, Stamp stamp) {
        if (corrected.replacement() == null) {
            facts.strike(corrected.entry());
        } else {
            facts.replace(corrected.entry(), corrected.replacement(), stamp);
        }
    }

    JobSheet sheet() {
        return new JobSheet(facts, course, entries);
    }
}
