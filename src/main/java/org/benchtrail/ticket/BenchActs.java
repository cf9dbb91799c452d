package org.benchtrail.ticket;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.benchtrail.bench.BenchRun;
import org.benchtrail.core.Invalid;
import org.benchtrail.core.method.Actor;
import org.benchtrail.core.method.Fact;
import org.benchtrail.core.method.JobSheet;
import org.benchtrail.core.method.Standing;
import org.benchtrail.core.method.StandingFact;
import org.benchtrail.core.method.Step;
import org.benchtrail.core.method.TicketNumber;
import org.benchtrail.core.method.identify.FindingRecorded;
import org.benchtrail.core.method.plan.ActionPlanned;
import org.jspecify.annotations.Nullable;

/** Results of the bench on job sheets. */
@ApplicationScoped
public class BenchActs {
    private static final int MOST_OFFERED = 50;

    private final TicketActs acts;
    private final TicketLook look;

    BenchActs(TicketActs acts, TicketLook look) {
        this.acts = acts;
        this.look = look;
    }

    /**
     * A place that a result may go to.
     *
     * @param part the part whose fit is checked; null if the result is evidence only
     */
    public record Place(
            TicketNumber ticket,
            String title,
            @Nullable Integer action,
            @Nullable String part) {
        /** As forms send it: the number, and the action after a slash. */
        public String value() {
            return action == null ? ticket.toString() : ticket + "/" + action;
        }
    }

    /** The viewer's open tickets, each with the planned parts that a part check could be about. */
    public List<Place> places(boolean partCheck, Actor actor) {
        QueueFilter mine =
                new QueueFilter(Standing.OPEN, null, actor.account(), null, null, null, "", null, MOST_OFFERED);
        List<Place> places = new ArrayList<>();
        for (TicketLine line : look.queue(mine, actor).tickets()) {
            TicketNumber number = TicketNumber.parse(line.number());
            if (partCheck && line.step() == Step.PLAN) {
                parts(look.ticket(number, actor).sheet())
                        .forEach(a -> places.add(new Place(
                                number, line.title(), a.entry(), a.fact().part())));
            }
            places.add(new Place(number, line.title(), null, null));
        }
        return places;
    }

    private static List<StandingFact<ActionPlanned>> parts(JobSheet sheet) {
        return sheet.actions().stream()
                .filter(a ->
                        a.fact().part() != null && sheet.settlement(a.entry()).isEmpty())
                .toList();
    }

    /**
     * Attaches a result, with what it answers.
     *
     * @param version that the sheet must have; null to take it as it is: a calculation depends on nothing there
     * @param action whose part was checked; null if none
     * @throws Invalid if there is no such action, or the values are those of the example
     */
    @Transactional
    public Outcome attach(
            TicketNumber number, @Nullable Integer version, BenchRun run, @Nullable Integer action, Actor actor) {
        run.refuseExample();
        JobSheet sheet = look.ticket(number, actor).sheet();
        if (action != null && parts(sheet).stream().noneMatch(a -> a.entry() == action)) {
            throw new Invalid("action", "Entry " + action + " is no planned action with a part: choose another.");
        }
        List<Act> facts = new ArrayList<>();
        for (Fact fact : run.facts(action, sheet.step() == Step.VERIFY)) {
            if (!isKnown(sheet, fact)) {
                facts.add(s -> fact);
            }
        }
        return acts.perform(number, version == null ? sheet.entries() : version, facts, actor);
    }

    /** A drive-failure finding that is on the sheet word for word need not be there twice. */
    private static boolean isKnown(JobSheet sheet, Fact fact) {
        return fact instanceof FindingRecorded
                && Optional.of(fact).equals(sheet.latest(FindingRecorded.class).map(StandingFact::fact));
    }
}
