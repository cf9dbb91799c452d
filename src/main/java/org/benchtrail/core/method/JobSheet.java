package org.benchtrail.core.method;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.integrity.Hole;
import org.benchtrail.core.method.desk.MoveFact;
import org.benchtrail.core.method.desk.Opened;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.core.method.identify.Hazard;
import org.benchtrail.core.method.identify.HazardsScreened;
import org.benchtrail.core.method.identify.StopWorkCleared;
import org.benchtrail.core.method.plan.ActionPlanned;
import org.benchtrail.core.method.plan.ActionSettled;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.core.method.theorize.TheoryChosen;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.jspecify.annotations.Nullable;

/**
 * All that is known of one ticket: its facts as they stand (corrections applied, struck ones left out) and its course.
 * Immutable; replaying the entries of the trail rebuilds it exactly.
 */
public final class JobSheet {
    private final FactIndex facts;
    private final Ledger ledger;
    private final Course course;
    private final int entries;
    private final List<Hole> holes;

    JobSheet(FactIndex facts, Ledger ledger, Course course, int entries, List<Hole> holes) {
        this.facts = facts;
        this.ledger = ledger;
        this.course = course;
        this.entries = entries;
        this.holes = holes;
    }

    /** @throws IllegalArgumentException if the entry is not number 1, or opens no ticket */
    public static JobSheet open(Entry first) {
        return new Replay(first, List.of()).sheet();
    }

    /**
     * Rebuilds the sheet, in time linear in the number of entries.
     *
     * @param trail all entries of one ticket, in order
     * @throws IllegalArgumentException if it is empty or an entry is missing or out of order
     */
    public static JobSheet replay(List<Entry> trail) {
        return replay(trail, List.of());
    }

    /** As {@link #replay(List)}, of a trail with holes after which it was agreed to go on. */
    public static JobSheet replay(List<Entry> trail, List<Hole> holes) {
        return Replay.of(trail, holes).sheet();
    }

    /** @throws IllegalArgumentException if the entry does not follow the last one */
    public JobSheet with(Entry entry) {
        Replay replay = new Replay(facts.copy(), ledger.copy(), course, entries, holes);
        replay.add(entry);
        return replay.sheet();
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

    /** Entries that are lost, after which it was agreed to go on. */
    public List<Hole> holes() {
        return holes;
    }

    public Opened opened() {
        return latest(Opened.class).orElseThrow().fact();
    }

    /** Entry since which the category, and so its checklist, is what it is. */
    public int categorySince() {
        return latest(Opened.class).orElseThrow().settledSince();
    }

    /** All facts as they stand, in the order of recording. */
    public List<? extends StandingFact<?>> facts() {
        return facts.of(Fact.class);
    }

    /** All facts of a kind, or of a group of kinds, in the order of recording; unmodifiable. */
    public <F extends Fact> List<StandingFact<F>> all(Class<F> kind) {
        return facts.of(kind);
    }

    public <F extends Fact> List<StandingFact<F>> all(Class<F> kind, Predicate<StandingFact<F>> which) {
        return all(kind).stream().filter(which).toList();
    }

    public <F extends Fact> List<StandingFact<F>> ofRound(Class<F> kind) {
        return all(kind, noted -> noted.round() == course.round());
    }

    public <F extends Fact> Optional<StandingFact<F>> latest(Class<F> kind) {
        return latest(kind, noted -> true);
    }

    public <F extends Fact> Optional<StandingFact<F>> latest(Class<F> kind, Predicate<StandingFact<F>> which) {
        List<StandingFact<F>> all = all(kind);
        for (int i = all.size() - 1; i >= 0; i--) {
            if (which.test(all.get(i))) {
                return Optional.of(all.get(i));
            }
        }
        return Optional.empty();
    }

    public <F extends Fact> Optional<StandingFact<F>> latestOfRound(Class<F> kind) {
        return latest(kind, noted -> noted.round() == course.round());
    }

    /** The latest of a kind, as long as it is taken for the present answer. */
    public <F extends Fact> Optional<StandingFact<F>> inForce(Class<F> kind) {
        return latest(kind).filter(f -> f.fact().lasts().covers(f, this));
    }

    /**
     * The fact of that kind recorded by that entry.
     *
     * @throws Invalid on {@code field} if there is none (or it was struck out)
     */
    public <F extends Fact> StandingFact<F> at(int entry, Class<F> kind, String field) {
        List<StandingFact<F>> all = all(kind);
        int position = FactIndex.position(all, entry);
        if (position < 0) {
            throw new Invalid(field, "Entry " + entry + " is not there, or not what is needed here.");
        }
        return all.get(position);
    }

    /**
     * The facts of a kind that oblige: as they stand (the latest where it replaces those before it), but what a correction
     * made less of, or struck out, as it was before, until somebody independent has agreed.
     */
    public <F extends Fact> List<StandingFact<F>> owed(Class<F> kind) {
        return ledger.owed(kind, all(kind));
    }

    /** Corrections that take away something that was owed, and wait for a supervisor to agree. */
    public List<Lessening> lessenings() {
        return List.copyOf(ledger.lessenings());
    }

    /** Whether that account has worked on this ticket, in whatever round, or works it now. */
    public boolean isHand(String account) {
        return ledger.isHand(account) || account.equals(course.assignee());
    }

    /** All who have worked on this ticket, in whatever round, those too whose entries were struck out. */
    public Set<String> hands() {
        return ledger.hands();
    }

    /** Whether that account has judged the work: approved, waived, agreed to a lessening, signed for another. */
    public boolean isJudge(String account) {
        return ledger.isJudge(account);
    }

    /** The same, where those accounts have judged the work besides what the trail says. */
    public JobSheet judgedBy(List<String> others) {
        return new JobSheet(facts, ledger.judgedBy(others), course, entries, holes);
    }

    /** Whether somebody who had that role at the time has worked on this ticket. */
    public boolean workedBy(Role role) {
        return ledger.worked(role) || course.assigneeRoles().contains(role);
    }

    /** Entry with which a fact of that kind was last struck out; 0 if none ever was. */
    public int lastStruck(Class<? extends Fact> kind) {
        return ledger.lastStruck(kind);
    }

    /** The kind of trouble that decides the checklist; another one counts when it has been agreed to. */
    public Category checkedAs() {
        return owed(Opened.class).get(0).fact().category();
    }

    /** What was known before that entry and stands unchanged since; the course is the present one. */
    public JobSheet before(int entry) {
        return only(standing -> standing.isSettledBefore(entry));
    }

    JobSheet only(Predicate<StandingFact<?>> which) {
        return new JobSheet(facts.only(which), ledger, course, entries, holes);
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
        return all(MoveFact.class, move -> move.fact().theoryFate().rulesOut()).stream()
                .map(move -> latest(TheoryChosen.class, c -> c.round() == move.round()))
                .flatMap(choice -> choice.flatMap(this::chosen).stream())
                .toList();
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
        return latest(ActionSettled.class, a -> a.round() == round() && a.fact().changesDevice())
                .map(StandingFact::entry)
                .orElse(course.roundStart());
    }

    /** Whether a hazard was found and not yet cleared. */
    public boolean workStopped() {
        return !hazards().isEmpty();
    }

    /** The hazards found and not yet cleared; to screen again clears nothing. */
    public Set<Hazard> hazards() {
        int cleared = latest(StopWorkCleared.class).map(StandingFact::entry).orElse(0);
        Set<Hazard> standing = EnumSet.noneOf(Hazard.class);
        all(HazardsScreened.class, screened -> screened.isAfter(cleared))
                .forEach(screened -> standing.addAll(screened.fact().found()));
        return standing;
    }

    /** The first drive-failure finding; from there on data come first. */
    public Optional<StandingFact<FindingRecorded>> driveFailure() {
        return owed(FindingRecorded.class).stream()
                .filter(f -> f.fact().driveFailure())
                .findFirst();
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof JobSheet sheet
                && entries == sheet.entries
                && course.equals(sheet.course)
                && facts().equals(sheet.facts());
    }

    @Override
    public int hashCode() {
        return facts().hashCode();
    }

    @Override
    public String toString() {
        return "JobSheet[" + course + ", " + entries + " entries]";
    }
}
