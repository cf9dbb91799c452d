package org.benchtrail.core.method;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.desk.Corrected;
import org.benchtrail.core.method.desk.MoveFact;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.desk.Rethought;
import org.benchtrail.core.method.desk.RuledOut;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.core.method.identify.HazardsScreened;
import org.benchtrail.core.method.identify.StopWorkCleared;
import org.benchtrail.core.method.plan.ActionPlanned;
import org.benchtrail.core.method.plan.ActionSettled;
import org.benchtrail.core.method.plan.Settlement;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.core.method.theorize.TheoryChosen;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.jspecify.annotations.Nullable;

/**
 * All that is known of one ticket: its facts as they stand (corrections applied, struck ones left out) and its course.
 * Immutable; replaying the entries of the trail rebuilds it exactly.
 */
public final class JobSheet {
    private final List<StandingFact<?>> facts;
    private final Course course;
    private final int entries;

    private JobSheet(List<StandingFact<?>> facts, Course course, int entries) {
        this.facts = facts;
        this.course = course;
        this.entries = entries;
    }

    /**
     * The sheet after the first entry.
     *
     * @throws IllegalArgumentException if the entry is not number 1, or opens no ticket
     */
    public static JobSheet open(Entry first) {
        if (first.stamp().entry() != 1 || !(first.fact() instanceof Opened opened)) {
            throw new IllegalArgumentException("a job sheet begins with entry 1, which opens the ticket");
        }
        Course course = Course.opened(opened, first.stamp());
        return new JobSheet(
                List.of(new StandingFact<>(opened, first.stamp(), 1, Step.IDENTIFY, false, null)), course, 1);
    }

    /**
     * Rebuilds the sheet.
     *
     * @param trail all entries of one ticket, in order
     * @throws IllegalArgumentException if it is empty or an entry is missing or out of order
     */
    public static JobSheet replay(List<Entry> trail) {
        JobSheet sheet = open(trail.get(0));
        for (Entry entry : trail.subList(1, trail.size())) {
            sheet = sheet.with(entry);
        }
        return sheet;
    }

    /**
     * The sheet with one entry more.
     *
     * @throws IllegalArgumentException if the entry does not follow the last one
     */
    public JobSheet with(Entry entry) {
        Stamp stamp = entry.stamp();
        if (stamp.entry() != entries + 1) {
            throw new IllegalArgumentException("entry " + (entries + 1) + " is missing: found " + stamp.entry());
        }
        List<StandingFact<?>> now = new ArrayList<>(facts);
        if (entry.fact() instanceof Corrected corrected) {
            correct(now, corrected, stamp);
        }
        now.add(noted(entry.fact(), stamp));
        Course next = entry.fact() instanceof MoveFact move ? move.after(course, stamp) : course;
        return new JobSheet(List.copyOf(now), next, stamp.entry());
    }

    private <F extends Fact> StandingFact<F> noted(F fact, Stamp stamp) {
        boolean late = fact.step() != null && fact.step().isBefore(course.step());
        return new StandingFact<>(fact, stamp, course.round(), course.step(), late, null);
    }

    private static void correct(List<StandingFact<?>> facts, Corrected corrected, Stamp stamp) {
        for (int i = 0; i < facts.size(); i++) {
            StandingFact<?> old = facts.get(i);
            if (old.entry() == corrected.entry()) {
                if (corrected.replacement() == null) {
                    facts.remove(i);
                } else {
                    facts.set(
                            i,
                            new StandingFact<>(
                                    corrected.replacement(),
                                    old.stamp(),
                                    old.round(),
                                    old.during(),
                                    old.late(),
                                    stamp));
                }
                return;
            }
        }
    }

    public Course course() {
        return course;
    }

    public Step step() {
        return course.step();
    }

    public int round() {
        return course.round();
    }

    /** Number of the last entry; the version of the sheet. */
    public int entries() {
        return entries;
    }

    public Opened opened() {
        return latest(Opened.class).orElseThrow().fact();
    }

    /** Entry since which the category, and so its checklist, is what it is. */
    int categorySince() {
        return latest(Opened.class).orElseThrow().settledSince();
    }

    /** All facts as they stand, in the order of recording. */
    public List<StandingFact<?>> facts() {
        return facts;
    }

    /** All facts of a kind, in the order of recording. */
    public <F extends Fact> List<StandingFact<F>> all(Class<F> kind) {
        return all(kind, noted -> true);
    }

    @SuppressWarnings("unchecked") // the class of the fact is checked on the line before the cast
    public <F extends Fact> List<StandingFact<F>> all(Class<F> kind, Predicate<StandingFact<F>> which) {
        List<StandingFact<F>> found = new ArrayList<>();
        for (StandingFact<?> noted : facts) {
            if (kind.isInstance(noted.fact())) {
                StandingFact<F> typed = (StandingFact<F>) noted;
                if (which.test(typed)) {
                    found.add(typed);
                }
            }
        }
        return found;
    }

    public <F extends Fact> List<StandingFact<F>> ofRound(Class<F> kind) {
        return all(kind, noted -> noted.round() == course.round());
    }

    public <F extends Fact> Optional<StandingFact<F>> latest(Class<F> kind) {
        return last(all(kind));
    }

    public <F extends Fact> Optional<StandingFact<F>> latest(Class<F> kind, Predicate<StandingFact<F>> which) {
        return last(all(kind, which));
    }

    public <F extends Fact> Optional<StandingFact<F>> latestOfRound(Class<F> kind) {
        return last(ofRound(kind));
    }

    /**
     * The fact of that kind recorded by that entry.
     *
     * @throws Invalid on {@code field} if there is none (or it was struck out)
     */
    public <F extends Fact> StandingFact<F> at(int entry, Class<F> kind, String field) {
        return last(all(kind, noted -> noted.entry() == entry))
                .orElseThrow(() -> new Invalid(field, "Entry " + entry + " is not there, or not what is needed here."));
    }

    /** What was known before that entry and stands unchanged since; the course is the present one. */
    JobSheet before(int entry) {
        List<StandingFact<?>> earlier =
                facts.stream().filter(noted -> noted.settledSince() < entry).toList();
        return new JobSheet(earlier, course, entry - 1);
    }

    /** The choice that is in force; empty until a theory is chosen in this round. */
    public Optional<StandingFact<TheoryChosen>> choice() {
        return latestOfRound(TheoryChosen.class);
    }

    /** The active theory; empty until one is chosen in this round. */
    public Optional<StandingFact<TheoryStated>> activeTheory() {
        return choice().flatMap(this::chosen);
    }

    private Optional<StandingFact<TheoryStated>> chosen(StandingFact<TheoryChosen> choice) {
        return latest(TheoryStated.class, t -> t.entry() == choice.fact().theory());
    }

    /** Theories ruled out in earlier rounds, by a check or by what the plan showed. */
    public List<StandingFact<TheoryStated>> ruledOut() {
        List<StandingFact<TheoryStated>> found = new ArrayList<>();
        for (StandingFact<MoveFact> move : all(MoveFact.class)) {
            if (rulesOut(move.fact())) {
                last(all(TheoryChosen.class, c -> c.round() == move.round()))
                        .flatMap(this::chosen)
                        .ifPresent(found::add);
            }
        }
        return found;
    }

    private static boolean rulesOut(MoveFact move) {
        return move instanceof RuledOut || (move instanceof Rethought rethought && rethought.theoryWrong());
    }

    /** Theories that are still open: stated and not ruled out, as long as they are not chosen again on new evidence. */
    public List<StandingFact<TheoryStated>> openTheories() {
        List<StandingFact<TheoryStated>> out = ruledOut();
        return all(TheoryStated.class, t -> !out.contains(t));
    }

    /** Actions planned in this round. */
    public List<StandingFact<ActionPlanned>> actions() {
        return ofRound(ActionPlanned.class);
    }

    /** How the action ended; empty while it is to be done. */
    public Optional<StandingFact<ActionSettled>> settlement(int action) {
        return latest(ActionSettled.class, s -> s.fact().action() == action);
    }

    /** The result of a check; empty while it is to be made. */
    public Optional<StandingFact<ResultRecorded>> result(int check) {
        return latest(ResultRecorded.class, r -> r.fact().check() == check);
    }

    /** Entry of the last action carried out in this round, or with which the round began: what is verified comes after. */
    public int lastWork() {
        return latestOfRound(ActionSettled.class, s -> s.fact().settlement() == Settlement.CARRIED_OUT)
                .map(StandingFact::entry)
                .orElse(course.roundStart());
    }

    private <F extends Fact> Optional<StandingFact<F>> latestOfRound(Class<F> kind, Predicate<StandingFact<F>> which) {
        return latest(kind, noted -> noted.round() == course.round() && which.test(noted));
    }

    /** Whether a hazard was found and not yet cleared. */
    public boolean workStopped() {
        return stopWork().isPresent();
    }

    /** The latest screening that found a hazard not yet cleared; to screen again clears nothing. */
    Optional<StandingFact<HazardsScreened>> stopWork() {
        int cleared = latest(StopWorkCleared.class).map(StandingFact::entry).orElse(0);
        return latest(
                HazardsScreened.class,
                screened -> screened.entry() > cleared && screened.fact().any());
    }

    /** The first drive-failure finding; from there on data come first. */
    public Optional<StandingFact<FindingRecorded>> driveFailure() {
        return all(FindingRecorded.class, f -> f.fact().driveFailure()).stream().findFirst();
    }

    private static <T> Optional<T> last(List<T> list) {
        return list.isEmpty() ? Optional.empty() : Optional.of(list.get(list.size() - 1));
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof JobSheet sheet
                && entries == sheet.entries
                && course.equals(sheet.course)
                && facts.equals(sheet.facts);
    }

    @Override
    public int hashCode() {
        return 31 * course.hashCode() + facts.hashCode();
    }

    @Override
    public String toString() {
        return "JobSheet[" + course + ", " + entries + " entries]";
    }
}
