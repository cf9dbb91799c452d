package org.benchtrail.core.method;

import java.util.List;
import org.benchtrail.core.integrity.Hole;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.LesseningAgreed;
import org.benchtrail.core.method.desk.MoveFact;
import org.benchtrail.core.method.desk.Opened;

/** A job sheet as it grows, entry by entry. */
final class Replay {
    private final FactIndex facts;
    private final Ledger ledger;
    private Course course;
    private int entries;
    private final List<Hole> holes;

    Replay(FactIndex facts, Ledger ledger, Course course, int entries, List<Hole> holes) {
        this.facts = facts;
        this.ledger = ledger;
        this.course = course;
        this.entries = entries;
        this.holes = holes;
    }

    Replay(Entry first, List<Hole> holes) {
        if (first.stamp().entry() != 1 || !(first.fact() instanceof Opened opened)) {
            throw new IllegalArgumentException("a job sheet begins with entry 1, which opens the ticket");
        }
        facts = new FactIndex();
        ledger = new Ledger();
        course = Course.opened(opened, first.stamp());
        entries = 1;
        this.holes = List.copyOf(holes);
        skip();
        facts.add(new StandingFact<>(opened, first.stamp(), 1, Step.IDENTIFY, false, null));
    }

    /** All of a trail. */
    static Replay of(List<Entry> trail, List<Hole> holes) {
        if (trail.isEmpty()) {
            throw new IllegalArgumentException("a job sheet begins with entry 1, which opens the ticket");
        }
        Replay replay = new Replay(trail.get(0), holes);
        trail.subList(1, trail.size()).forEach(replay::add);
        return replay;
    }

    void add(Entry entry) {
        Stamp stamp = entry.stamp();
        if (stamp.entry() != entries + 1) {
            throw new IllegalArgumentException("entry " + (entries + 1) + " is missing: found " + stamp.entry());
        }
        if (entry.fact() instanceof Corrected corrected) {
            correct(corrected, stamp);
        } else if (entry.fact() instanceof LesseningAgreed agreed) {
            ledger.agreed(agreed.correction());
        }
        if (entry.fact().replacesEarlier()) {
            facts.lastOf(entry.fact().getClass())
                    .ifPresent(old -> ledger.replaced(old, entry.fact(), stamp, isSlip(old, stamp)));
        }
        ledger.takesPart(entry.fact().takesPart(), stamp, course.assignee());
        boolean late = entry.fact().step() != null && entry.fact().step().isBefore(course.step());
        facts.add(new StandingFact<>(entry.fact(), stamp, course.round(), course.step(), late, null));
        if (entry.fact() instanceof MoveFact move) {
            course = move.after(course, stamp);
        }
        entries++;
        skip();
    }

    /** A hole has no entries, and its numbers are taken. */
    private void skip() {
        Hole.at(entries + 1, holes).ifPresent(hole -> entries = hole.last());
    }

    private void correct(Corrected corrected, Stamp stamp) {
        facts.find(corrected.entry())
                .ifPresent(old -> ledger.changed(old, corrected.replacement(), stamp, isSlip(old, stamp)));
        if (corrected.replacement() == null) {
            facts.strike(corrected.entry());
        } else {
            facts.replace(corrected.entry(), corrected.replacement(), stamp);
        }
    }

    /** Somebody puts an entry of their own right while it is first identified, and nobody else has acted since. */
    private boolean isSlip(StandingFact<?> old, Stamp stamp) {
        return course.round() == 1
                && course.step() == Step.IDENTIFY
                && old.stamp().person().equals(stamp.person())
                && facts.since(old.entry()).stream()
                        .allMatch(f -> f.stamp().person().equals(stamp.person()));
    }

    JobSheet sheet() {
        return new JobSheet(facts, ledger, course, entries, holes);
    }
}
