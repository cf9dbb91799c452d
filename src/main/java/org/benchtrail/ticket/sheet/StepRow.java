package org.benchtrail.ticket.sheet;

import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.RecordPlace;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.desk.MoveFact;
import org.benchtrail.core.method.document.CauseNamed;
import org.benchtrail.core.method.identify.DataAnswered;
import org.benchtrail.core.method.identify.ReadingRecorded;
import org.benchtrail.core.method.identify.SymptomRecorded;
import org.benchtrail.core.method.test.ResultRecorded;
import org.benchtrail.core.method.theorize.TheoryStated;
import org.benchtrail.core.method.verify.SymptomRechecked;
import org.benchtrail.ticket.EntryLine;
import org.benchtrail.ticket.Viewing;

/**
 * One of the six rows.
 *
 * @param summary of a step that was left, in one line
 * @param initials of who left it
 * @param stamp who left it, and when; empty while nobody has
 */
public record StepRow(Step step, State state, String summary, String initials, String stamp, List<EntryLine> facts) {

    public enum State {
        NOW,
        SIGNED,
        LATER;

        /** As the stylesheet knows it. */
        public String css() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    public boolean isNow() {
        return state == State.NOW;
    }

    public boolean isSigned() {
        return state == State.SIGNED;
    }

    static List<StepRow> all(Viewing viewing) {
        return Stream.of(Step.values()).map(step -> of(step, viewing)).toList();
    }

    private static StepRow of(Step step, Viewing viewing) {
        JobSheet sheet = viewing.sheet();
        boolean open = sheet.course().isOpen();
        boolean left = !open || step.isBefore(sheet.step());
        Optional<StandingFact<MoveFact>> leaving = left
                ? sheet.latest(
                        MoveFact.class,
                        m -> m.during() == step && m.fact().move().gated())
                : Optional.empty();
        return new StepRow(
                step,
                open && step == sheet.step() ? State.NOW : leaving.isPresent() ? State.SIGNED : State.LATER,
                summary(step, sheet),
                leaving.map(m -> initials(viewing.name(m.stamp().person()))).orElse(""),
                leaving.map(viewing::stamp).orElse(""),
                facts(step, sheet.round(), viewing));
    }

    private static String initials(String name) {
        return Stream.of(name.split(" "))
                .filter(part -> !part.isEmpty())
                .map(part -> part.substring(0, part.offsetByCodePoints(0, 1)))
                .limit(3)
                .collect(Collectors.joining());
    }

    /** What was recorded of a step in a round; in the round that a ticket is in also what still holds from before. */
    static List<EntryLine> facts(Step step, int round, Viewing viewing) {
        return viewing.lines(recorded(step, round, viewing.sheet()).toList());
    }

    /** As {@link #facts}, not yet in words. */
    static Stream<? extends StandingFact<?>> recorded(Step step, int round, JobSheet sheet) {
        boolean present = round == sheet.round();
        return sheet.facts().stream()
                .filter(f -> f.round() == round || (present && holds(f, sheet)))
                .filter(f -> f.fact().shownUnder() == step || (f.fact().shownUnder() == null && tells(f, step, sheet)));
    }

    /** The answers to identify are given once, until the ticket is reopened. */
    private static boolean holds(StandingFact<?> fact, JobSheet sheet) {
        return fact.fact().shownUnder() == Step.IDENTIFY
                && fact.isAfter(sheet.course().openedAt());
    }

    /** What belongs to no step is told at the step at which it happened; the moves on are told by the stamps. */
    private static boolean tells(StandingFact<?> fact, Step step, JobSheet sheet) {
        RecordPlace place = fact.fact().placeIn(sheet);
        return fact.during() == step && place != RecordPlace.SIGNATURE && place != RecordPlace.TRAIL;
    }

    private static String summary(Step step, JobSheet sheet) {
        return switch (step) {
            case IDENTIFY ->
                count(sheet.all(SymptomRecorded.class), "symptom")
                        + ", "
                        + count(sheet.all(ReadingRecorded.class), "reading")
                        + sheet.latest(DataAnswered.class)
                                .map(d -> ", data: " + d.fact().state().words())
                                .orElse("");
            case THEORIZE ->
                sheet.activeTheory().map(t -> t.fact().text()).orElse(count(sheet.all(TheoryStated.class), "theory"));
            case TEST -> count(sheet.ofRound(ResultRecorded.class), "result");
            case PLAN -> count(sheet.actions(), "action");
            case VERIFY -> count(sheet.ofRound(SymptomRechecked.class), "re-check");
            case DOCUMENT ->
                sheet.latestOfRound(CauseNamed.class).map(c -> c.fact().cause()).orElse("");
        };
    }

    private static String count(Collection<?> list, String noun) {
        String many = noun.endsWith("y") ? noun.substring(0, noun.length() - 1) + "ies" : noun + "s";
        return list.size() == 1 ? "1 " + noun : list.size() + " " + many;
    }
}
